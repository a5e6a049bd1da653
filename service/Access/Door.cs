using System.Security.Claims;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;
using WireCoach.Rules.Cases;
using WireCoach.Rules.Statements;
using WireCoach.WebUi.Desk;

namespace WireCoach.Service.Access;

/// <summary>Signs browsers in and out.</summary>
internal sealed class Door(AccessCodes codes, Attempts attempts, SignInAudit audit, IHttpContextAccessor http) : IDoor
{
    public bool IsShared => true;

    public string? SignedInAs => Http.User.FindFirstValue(ClaimTypes.Role)?.ToLowerInvariant();

    public bool Manages => Is(AccessRole.Manager);

    public bool SeesAll => Manages || Is(AccessRole.Technician);

    /// <remarks>Who signed in as a homeowner gets no technician's questions: those may ask for live measurements.</remarks>
    public IReadOnlyList<Role> MayBe => SeesAll ? Enum.GetValues<Role>() : Is(AccessRole.Apprentice) ? [Role.Homeowner, Role.Apprentice] : Is(AccessRole.Homeowner) ? [Role.Homeowner] : [];

    public IReadOnlyList<string> Roles => [.. Enum.GetValues<AccessRole>().Where(codes.Has).Select(role => role.ToString().ToLowerInvariant())];

    private HttpContext Http => http.HttpContext!;

    public async Task<Problem?> Enter(string? role, string? code)
    {
        if (!Enum.TryParse<AccessRole>(role, ignoreCase: true, out var wanted) || !Enum.IsDefined(wanted))
        {
            return new("invalid-fact", "role", Statement.Of("access.no-role"));
        }

        var peer = Http.Connection.RemoteIpAddress;
        if (!attempts.Take(peer))
        {
            audit.Write(wanted, peer, "too-many");
            return new("too-many-requests", "code", Statement.Of("access.too-many"));
        }

        if (!codes.IsRight(wanted, code))
        {
            audit.Write(wanted, peer, "refused");
            return new("gate-closed", "code", Statement.Of("access.wrong-code"));
        }

        audit.Write(wanted, peer, "signed-in");
        var identity = new ClaimsIdentity([new(ClaimTypes.Role, wanted.ToString())], CookieAuthenticationDefaults.AuthenticationScheme);
        await Http.SignInAsync(new ClaimsPrincipal(identity));
        return null;
    }

    public async Task Leave()
    {
        if (Enum.TryParse<AccessRole>(SignedInAs, ignoreCase: true, out var role))
        {
            audit.Write(role, Http.Connection.RemoteIpAddress, "signed-out");
        }

        await Http.SignOutAsync();
    }

    private bool Is(AccessRole role) => Http.User.Identity?.IsAuthenticated == true && Http.User.HasClaim(ClaimTypes.Role, role.ToString());
}
