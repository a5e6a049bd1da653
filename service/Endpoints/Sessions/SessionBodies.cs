using WireCoach.Rules.Cases;

namespace WireCoach.Service.Endpoints.Sessions;

/// <summary>Plain words.</summary>
internal sealed record MessageBody
{
    public string? Text { get; init; }
}

/// <summary>Facts in structure.</summary>
internal sealed record FactsBody
{
    public IReadOnlyList<Fact?>? Facts { get; init; }
}

/// <summary>Where the probes go.</summary>
internal sealed record ProbeBody
{
    public string? From { get; init; }

    public string? To { get; init; }
}
