using WireCoach.Rules.Cases;
using WireCoach.Rules.Statements;

namespace WireCoach.WebUi.Desk;

/// <summary>Where people sign in when the service is shared on a network.</summary>
public interface IDoor
{
    /// <summary>Whether anybody has to sign in at all.</summary>
    bool IsShared { get; }

    /// <summary>As whom this browser is signed in, or <see langword="null"/>.</summary>
    string? SignedInAs { get; }

    /// <summary>Whether this browser may look around at all: nobody has to sign in, or somebody did.</summary>
    bool IsInside => !IsShared || SignedInAs is not null;

    /// <summary>Whether this browser may sign jobs off and delete them.</summary>
    bool Manages { get; }

    /// <summary>Whether this browser sees every job, and not only its own.</summary>
    bool SeesAll { get; }

    /// <summary>As whom a job may be opened in this browser.</summary>
    IReadOnlyList<Role> MayBe { get; }

    /// <summary>The roles that have a code.</summary>
    IReadOnlyList<string> Roles { get; }

    /// <summary>Signs this browser in; <see langword="null"/> when it worked.</summary>
    Task<Problem?> Enter(string? role, string? code);

    /// <summary>Signs this browser out.</summary>
    Task Leave();
}
