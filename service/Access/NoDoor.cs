using WireCoach.Rules.Cases;
using WireCoach.Rules.Statements;
using WireCoach.WebUi.Desk;

namespace WireCoach.Service.Access;

/// <summary>A service for this machine only: nobody signs in.</summary>
internal sealed class NoDoor : IDoor
{
    public bool IsShared => false;

    public string? SignedInAs => null;

    public bool Manages => true;

    public bool SeesAll => true;

    public IReadOnlyList<Role> MayBe { get; } = Enum.GetValues<Role>();

    public IReadOnlyList<string> Roles => [];

    public Task<Problem?> Enter(string? role, string? code) => Task.FromResult<Problem?>(new("unknown-address", "path", Statement.Of("status.not-found")));

    public Task Leave() => Task.CompletedTask;
}
