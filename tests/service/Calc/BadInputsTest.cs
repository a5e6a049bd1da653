using System.Text.Json;
using System.Text.Json.Nodes;

namespace WireCoach.Service.Tests.Calc;

/// <summary>Every calculator against what cannot be: a problem that names the member and says what would do.</summary>
public sealed class BadInputsTest(ServiceFixture service) : IClassFixture<ServiceFixture>
{
    /// <summary>A good question to each calculator, of which one member at a time is spoilt.</summary>
    private static readonly Dictionary<string, string> Good = new(StringComparer.Ordinal)
    {
        ["plate"] = """{"phases":1,"volts":[115,230],"amps":[9.8,4.9],"horsepower":0.5,"rpm":1725,"hertz":60}""",
        ["supply-na"] = """{"region":"na","phases":1,"volts":230,"horsepower":5,"plateAmps":25,"insulationCelsius":75,"protection":"inverse-time-breaker","lengthMetres":20}""",
        ["supply-iec"] = """{"region":"iec","phases":3,"volts":400,"kilowatts":4,"plateAmps":8.5,"insulationCelsius":70,"protection":"circuit-breaker-c","lengthMetres":20}""",
        ["capacitor"] = """{"microfarads":40,"volts":440,"use":"run","hertz":60,"motorVolts":230,"fromVolts":622,"bleedOhms":20000}""",
        ["insulation"] = """{"ratedVolts":230,"readings":[{"megohms":50,"celsius":30,"testVolts":500}],"earthOhms":0.2}""",
        ["winding-heat"] = """{"coldOhms":10,"coldCelsius":20,"hotOhms":12.6,"ambientCelsius":24,"insulationClass":"B"}""",
        ["winding-heat-carried"] = """{"ohms":10,"fromCelsius":20,"toCelsius":115}""",
        ["unbalance"] = """{"volts":[462,463,455]}""",
        ["unbalance-amps"] = """{"amps":[10,10,12]}""",
    };

    [Fact]
    public async Task What_is_spoilt_below_is_good_before()
    {
        foreach (var (name, body) in Good)
        {
            var (status, answer) = await service.PostText(Path(name), body);
            Assert.True(status == 200, $"{name}: {answer}");
        }
    }

    [Theory]
    [InlineData("plate", """{"phases":2}""", "phases", "1 or 3")]
    [InlineData("plate", """{"region":"mars"}""", "region", "na, iec")]
    [InlineData("plate", """{"volts":99999}""", "volts", "15000 V")]
    [InlineData("plate", """{"amps":[-1,2]}""", "amps", "above 0 A")]
    [InlineData("plate", """{"horsepower":-1}""", "horsepower", "above 0 hp")]
    [InlineData("plate", """{"horsepower":"half"}""", "horsepower", "needs a number")]
    [InlineData("plate", """{"kilowatts":9000}""", "kilowatts", "750 kW")]
    [InlineData("plate", """{"rpm":0}""", "rpm", "above 0 rpm")]
    [InlineData("plate", """{"hertz":5}""", "hertz", "10 Hz")]
    [InlineData("plate", """{"poles":3}""", "poles", "2 and 4")]
    [InlineData("plate", """{"poles":60}""", "poles", "48")]
    [InlineData("plate", """{"serviceFactor":7}""", "serviceFactor", "from 1 to 2")]
    [InlineData("plate", """{"efficiency":200}""", "efficiency", "100 %")]
    [InlineData("plate", """{"powerFactor":-1}""", "powerFactor", "100 %")]
    [InlineData("plate", """{"powerFactor":1.2}""", "powerFactor", "neither a share")]
    [InlineData("supply-na", """{"powerFactor":1.2}""", "powerFactor", "neither a share")]
    [InlineData("supply-iec", """{"efficiency":3}""", "efficiency", "neither a share")]
    [InlineData("capacitor", """{"series":["x"]}""", "series[0]", "not of the kind")]
    [InlineData("plate", """{"ambientCelsius":500}""", "ambientCelsius", "100 °C")]
    [InlineData("plate", """{"temperatureRise":900}""", "temperatureRise", "200 K")]
    [InlineData("supply-na", """{"region":"eu"}""", "region", "na, iec")]
    [InlineData("supply-na", """{"phases":2}""", "phases", "1 or 3")]
    [InlineData("supply-na", """{"horsepower":null,"kilowatts":18.5}""", "kilowatts", "10 hp (7.46 kW)")]
    [InlineData("supply-na", """{"horsepower":25}""", "horsepower", "'phases' 3 at 230 V, or choose 10 hp")]
    [InlineData("supply-na", """{"horsepower":0.01}""", "horsepower", "nearest size that it has is 0.167 hp")]
    [InlineData("supply-na", """{"phases":3,"horsepower":250}""", "horsepower", "nearest size that it has is 200 hp")]
    [InlineData("supply-na", """{"horsepower":"x"}""", "horsepower", "needs a number")]
    [InlineData("supply-na", """{"kilowatts":11}""", "kilowatts", "not one power")]
    [InlineData("supply-na", """{"volts":300}""", "volts", "220–240 V")]
    [InlineData("supply-na", """{"volts":50}""", "volts", "110–120 V")]
    [InlineData("supply-na", """{"insulationCelsius":80}""", "insulationCelsius", "the nearest is 75 °C")]
    [InlineData("supply-na", """{"terminalCelsius":105}""", "terminalCelsius", "the nearest is 90 °C")]
    [InlineData("supply-na", """{"ambientCelsius":75}""", "ambientCelsius", "75 °C")]
    [InlineData("supply-na", """{"protection":"fuse-x"}""", "protection", "dual-element-fuse")]
    [InlineData("supply-na", """{"protection":"circuit-breaker-c"}""", "protection", "inverse-time-breaker")]
    [InlineData("supply-na", """{"edition":1960}""", "edition", "the nearest is 1999")]
    [InlineData("supply-na", """{"edition":2024}""", "edition", "the nearest is 2023")]
    [InlineData("supply-na", """{"edition":"lately"}""", "edition", "needs a number")]
    [InlineData("supply-na", """{"hertz":400}""", "hertz", "nearest to 400 Hz is 60 Hz")]
    [InlineData("supply-na", """{"conductors":60}""", "conductors", "30")]
    [InlineData("supply-na", """{"laying":"b2"}""", "laying", "IEC")]
    [InlineData("supply-na", """{"earthing":"tt"}""", "earthing", "IEC")]
    [InlineData("supply-na", """{"material":"aluminium"}""", "material", "copper")]
    [InlineData("supply-na", """{"motorType":"linear"}""", "motorType", "squirrel-cage")]
    [InlineData("supply-na", """{"motorType":"squirrel-cage"}""", "motorType", "single-phase")]
    [InlineData("supply-na", """{"motorType":"dc","phases":3}""", "motorType", "no phases")]
    [InlineData("supply-na", """{"rectifier":"half-wave"}""", "rectifier", "'motorType' dc")]
    [InlineData("supply-na", """{"starter":"soft"}""", "starter", "direct, star-delta, autotransformer")]
    [InlineData("supply-na", """{"starter":"star-delta"}""", "starter", "three-phase")]
    [InlineData("supply-na", """{"starter":"autotransformer"}""", "tap", "missing")]
    [InlineData("supply-na", """{"tap":0.65}""", "tap", "autotransformer")]
    [InlineData("supply-na", """{"codeLetter":"I"}""", "codeLetter", "A B C D")]
    [InlineData("supply-na", """{"serviceFactor":9}""", "serviceFactor", "up to 2")]
    [InlineData("supply-na", """{"lengthMetres":99999}""", "lengthMetres", "5000 m")]
    [InlineData("supply-na", """{"singlePhaseVolts":230}""", "singlePhaseVolts", "one phase already")]
    [InlineData("supply-na", """{"otherMotorAmps":[-4]}""", "otherMotorAmps[0]", "above 0 A")]
    [InlineData("supply-na", """{"faultAmps":500,"faultSeconds":0.1}""", "faultAmps", "IEC")]
    [InlineData("supply-iec", """{"phases":1,"volts":230,"kilowatts":18.5}""", "kilowatts", "'phases' 3 at 400 V, or choose 7.5 kW")]
    [InlineData("supply-iec", """{"kilowatts":0.01}""", "kilowatts", "nearest size that it has is 0.06 kW")]
    [InlineData("supply-iec", """{"kilowatts":200}""", "kilowatts", "nearest size that it has is 22 kW")]
    [InlineData("supply-iec", """{"phases":1,"volts":230,"kilowatts":null,"horsepower":25}""", "horsepower", "7.5 kW (10.1 hp)")]
    [InlineData("supply-iec", """{"volts":460}""", "volts", "380–415 V")]
    [InlineData("supply-iec", """{"insulationCelsius":60}""", "insulationCelsius", "the nearest is 70 °C")]
    [InlineData("supply-iec", """{"protection":"circuit-breaker-k"}""", "protection", "circuit-breaker-c")]
    [InlineData("supply-iec", """{"edition":1890}""", "edition", "1999")]
    [InlineData("supply-iec", """{"ambientCelsius":70}""", "ambientCelsius", "70 °C")]
    [InlineData("supply-iec", """{"laying":"e"}""", "laying", "b2, c")]
    [InlineData("supply-iec", """{"earthing":"xx"}""", "earthing", "tn, tn-s, tn-c-s, tt")]
    [InlineData("supply-iec", """{"motorType":"dc"}""", "motorType", "North America")]
    [InlineData("supply-iec", """{"faultAmps":800}""", "faultSeconds", "missing")]
    [InlineData("supply-iec", """{"faultAmps":800,"faultSeconds":9}""", "faultSeconds", "5 s")]
    [InlineData("supply-iec", """{"plateAmps":85}""", "protection", "63 A")]
    [InlineData("capacitor", """{"microfarads":-1}""", "microfarads", "above 0 µF")]
    [InlineData("capacitor", """{"microfarads":[50,40]}""", "microfarads", "from low to high")]
    [InlineData("capacitor", """{"use":"motor"}""", "use", "start, run, unknown")]
    [InlineData("capacitor", """{"hertz":0}""", "hertz", "1000 Hz")]
    [InlineData("capacitor", """{"measured":{"volts":330}}""", "measured.amps", "missing")]
    [InlineData("capacitor", """{"measured":{"open":true,"short":true}}""", "measured.short", "not both")]
    [InlineData("capacitor", """{"measured":{"microfarads":99999999}}""", "measured.microfarads", "20000 µF")]
    [InlineData("capacitor", """{"series":[{"volts":3}]}""", "series[0].microfarads", "missing")]
    [InlineData("capacitor", """{"series":[5],"parallel":[5]}""", "parallel", "not both")]
    [InlineData("capacitor", """{"bleedOhms":0}""", "bleedOhms", "above 0 Ω")]
    [InlineData("capacitor", """{"fromVolts":30,"toVolts":50}""", "toVolts", "goes down")]
    [InlineData("capacitor", """{"candidates":[{"microfarads":40,"use":"mica"}]}""", "candidates[0].use", "start, run, unknown")]
    [InlineData("capacitor", """{"tolerancePercent":500}""", "tolerancePercent", "50 %")]
    [InlineData("capacitor", """{"turnsRatio":50}""", "turnsRatio", "up to 3")]
    [InlineData("capacitor", """{"horsepower":5,"kilowatts":9}""", "kilowatts", "not one power")]
    [InlineData("insulation", """{"edition":2024}""", "edition", "2000, 2013, the nearest is 2013")]
    [InlineData("insulation", """{"edition":1999}""", "edition", "the nearest is 2000")]
    [InlineData("insulation", """{"edition":"lately"}""", "edition", "needs a number")]
    [InlineData("insulation", """{"region":"mars"}""", "region", "na, iec")]
    [InlineData("insulation", """{"kind":"hairpin"}""", "kind", "random-wound, form-wound")]
    [InlineData("insulation", """{"insulationSystem":"glass"}""", "insulationSystem", "thermoset, thermoplastic")]
    [InlineData("insulation", """{"insulationClass":"Z"}""", "insulationClass", "A, E, B, F, H")]
    [InlineData("insulation", """{"ratedVolts":99999}""", "ratedVolts", "15000 V")]
    [InlineData("insulation", """{"earthOhms":-1}""", "earthOhms", "0 Ω")]
    [InlineData("insulation", """{"cordMetres":600}""", "cordMetres", "500 m")]
    [InlineData("insulation", """{"readings":[{"megohms":5,"celsius":300}]}""", "readings[0].celsius", "200 °C")]
    [InlineData("insulation", """{"readings":[{"megohms":5,"testVolts":20000}]}""", "readings[0].testVolts", "15000 V")]
    [InlineData("insulation", """{"readings":[{"megohms":5,"atMinute":0}]}""", "readings[0].atMinute", "0.01 min")]
    [InlineData("winding-heat", """{"material":"silver"}""", "material", "copper, aluminium")]
    [InlineData("winding-heat", """{"insulationClass":"C"}""", "insulationClass", "A, E, B, F, H")]
    [InlineData("winding-heat", """{"altitudeMetres":5000}""", "altitudeMetres", "4000 m")]
    [InlineData("winding-heat", """{"ambientCelsius":70}""", "ambientCelsius", "60 °C")]
    [InlineData("winding-heat", """{"serviceFactor":0.5}""", "serviceFactor", "between 1 and 2")]
    [InlineData("winding-heat", """{"coldOhms":0}""", "coldOhms", "above 0 Ω")]
    [InlineData("winding-heat", """{"hotOhms":5}""", "hotOhms", "exchanged")]
    [InlineData("winding-heat", """{"hotOhms":100}""", "hotOhms", "300 °C")]
    [InlineData("winding-heat", """{"coldCelsius":null}""", "coldCelsius", "missing")]
    [InlineData("winding-heat-carried", """{"toCelsius":999}""", "toCelsius", "300 °C")]
    [InlineData("winding-heat-carried", """{"material":"iron"}""", "material", "copper, aluminium")]
    [InlineData("winding-heat-carried", """{"fromCelsius":null}""", "fromCelsius", "missing")]
    [InlineData("unbalance", """{"volts":[1,2]}""", "volts", "three readings")]
    [InlineData("unbalance", """{"volts":[230,230,0]}""", "volts", "above zero")]
    [InlineData("unbalance", """{"volts":[1e9,1e9,1e9]}""", "volts", "15000 V")]
    [InlineData("unbalance", """{"volts":null}""", "volts", "one of volts, amps, roll, ohms")]
    [InlineData("unbalance", """{"amps":[1,1,1]}""", "amps", "not several")]
    [InlineData("unbalance", """{"volts":null,"roll":[[1,2,3]]}""", "roll", "three sets")]
    [InlineData("unbalance", """{"volts":null,"ohms":[4,4,4.1],"resolutionOhms":-1}""", "resolutionOhms", "0 Ω")]
    [InlineData("unbalance-amps", """{"amps":[-1,2,3]}""", "amps", "above zero")]
    [InlineData("unbalance-amps", """{"amps":[9000,9000,9000]}""", "amps", "5000 A")]
    public async Task It_is_refused_by_its_member_with_what_would_do(string calculator, string spoilt, string field, string says)
    {
        var body = JsonNode.Parse(Good[calculator])!.AsObject();
        foreach (var (member, value) in JsonNode.Parse(spoilt)!.AsObject())
        {
            body[member] = value?.DeepClone();
        }

        var (status, answer) = await service.PostText(Path(calculator), body.ToJsonString());
        Assert.True(status == 400, $"{spoilt}: {status} {answer}");
        var told = answer.GetProperty("errors").EnumerateObject().Where(error => error.Name == field).SelectMany(error => error.Value.EnumerateArray()).Select(text => text.GetString()!).ToList();
        Assert.Contains(told, text => text.Contains(says, StringComparison.Ordinal));
        Assert.All(told, text => Assert.DoesNotContain("{", text, StringComparison.Ordinal));
    }

    [Fact]
    public async Task What_was_sent_is_not_repeated_at_any_length()
    {
        var (status, answer) = await service.PostText("/api/calc/plate", $$"""{"volts":"{{new string('x', 20_000)}}"}""");
        Assert.Equal(400, status);
        Assert.True(answer.GetProperty("errors").GetProperty("volts")[0].GetString()!.Length < 600);
    }

    /// <summary>What is not impossible and yet cannot be taken at its word is answered with a note.</summary>
    [Theory]
    [InlineData("supply-na", """{"plateAmps":2.5}""", "14.7 A flow even without any loss")]
    [InlineData("supply-na", """{"plateAmps":200}""", "7.14 times the table's 28 A")]
    [InlineData("supply-na", """{"plateVolts":460}""", "Do not connect it to this supply")]
    [InlineData("supply-iec", """{"plateAmps":3}""", "5.25 A flow even without any loss")]
    [InlineData("supply-iec", """{"insulationCelsius":90}""", "70 °C insulation")]
    [InlineData("plate", """{"codeLetter":"I"}""", "no locked-rotor code letter")]
    [InlineData("plate", """{"insulationClass":"Z"}""", "no insulation class")]
    [InlineData("plate", """{"poles":2}""", "the speed of 4 poles")]
    [InlineData("plate", """{"volts":[115,230,460]}""", "do not pair")]
    [InlineData("insulation", """{"readings":[{"megohms":50,"celsius":95,"testVolts":500}]}""", "no correction holds")]
    public async Task What_is_doubtful_is_said_beside_the_answer(string calculator, string doubtful, string says)
    {
        var body = JsonNode.Parse(Good[calculator])!.AsObject();
        foreach (var (member, value) in JsonNode.Parse(doubtful)!.AsObject())
        {
            body[member] = value?.DeepClone();
        }

        var (status, answer) = await service.PostText(Path(calculator), body.ToJsonString());
        Assert.Equal(200, status);
        Assert.Contains(says, JsonSerializer.Serialize(answer, Plain), StringComparison.Ordinal);
    }

    private static readonly JsonSerializerOptions Plain = new() { Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    private static string Path(string calculator) => $"/api/calc/{calculator.Replace("-na", "", StringComparison.Ordinal).Replace("-iec", "", StringComparison.Ordinal).Replace("-carried", "", StringComparison.Ordinal).Replace("-amps", "", StringComparison.Ordinal)}";
}
