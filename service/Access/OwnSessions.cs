using Microsoft.AspNetCore.DataProtection;
using WireCoach.Service.Sessions;

namespace WireCoach.Service.Access;

/// <summary>The sessions that were opened in this browser, in a cookie that only the service can write.</summary>
internal sealed class OwnSessions(IDataProtectionProvider protection, IHttpContextAccessor http)
{
    private const string Cookie = "__Host-wirecoach-own";
    private const int Most = 60;

    private readonly IDataProtector _protector = protection.CreateProtector("own-sessions");

    public IReadOnlyList<string> All
    {
        get
        {
            if (http.HttpContext?.Request.Cookies[Cookie] is not { Length: > 0 } cookie)
            {
                return [];
            }

            try
            {
                return [.. _protector.Unprotect(cookie).Split(' ').Where(SessionId.IsWellFormed)];
            }
            catch (System.Security.Cryptography.CryptographicException)
            {
                return []; // written by somebody else, or with keys that are gone
            }
        }
    }

    public void Add(string session) => http.HttpContext!.Response.Cookies.Append(
        Cookie,
        _protector.Protect(string.Join(' ', All.Append(session).TakeLast(Most))),
        new CookieOptions { HttpOnly = true, Secure = true, SameSite = SameSiteMode.Strict, Path = "/", MaxAge = TimeSpan.FromDays(30), IsEssential = true });
}
