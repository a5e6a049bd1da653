using System.Text.Json.Serialization;

namespace WireCoach.Rules.Cases;

/// <summary>Who sits at the other end; decides what the gate opens and how plainly things are said.</summary>
[JsonConverter(typeof(JsonStringEnumConverter<Role>))]
public enum Role
{
    /// <summary>A technician at the bench.</summary>
    [JsonStringEnumMemberName("technician")]
    Technician,

    /// <summary>A person at home: looks, unplugged, and measures nothing live.</summary>
    [JsonStringEnumMemberName("homeowner")]
    Homeowner,

    /// <summary>A shop manager who reads the records.</summary>
    [JsonStringEnumMemberName("manager")]
    Manager,

    /// <summary>An apprentice: dead work alone, more only with a competent person beside them.</summary>
    [JsonStringEnumMemberName("apprentice")]
    Apprentice,
}

/// <summary>Which family of codes, units and supplies applies.</summary>
[JsonConverter(typeof(JsonStringEnumConverter<Region>))]
public enum Region
{
    /// <summary>North America: 60 Hz, AWG, horsepower.</summary>
    [JsonStringEnumMemberName("na")]
    NorthAmerica,

    /// <summary>IEC countries: 50 Hz, mm², kilowatts.</summary>
    [JsonStringEnumMemberName("iec")]
    Iec,
}
