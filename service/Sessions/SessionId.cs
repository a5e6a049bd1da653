using System.Security.Cryptography;

namespace WireCoach.Service.Sessions;

/// <summary>Session ids: the time of opening and some chance, in digits that sort as text and are hard to misread.</summary>
internal static class SessionId
{
    private const string Digits = "0123456789abcdefghjkmnpqrstvwxyz";
    private const int TimeDigits = 9;
    private const int ChanceDigits = 7;

    public static string New(DateTimeOffset at) => From(at) + RandomNumberGenerator.GetString(Digits, ChanceDigits);

    /// <summary>The beginning of the ids of sessions that are opened at this time; earlier ones sort before it.</summary>
    public static string From(DateTimeOffset at) => string.Create(TimeDigits, Math.Max(0, at.ToUnixTimeMilliseconds()), (text, milliseconds) =>
    {
        for (var place = text.Length - 1; place >= 0; place--, milliseconds >>= 5)
        {
            text[place] = Digits[(int)(milliseconds & 31)];
        }
    });

    /// <summary>Whether a text can be a session's id at all.</summary>
    public static bool IsWellFormed(string text) => text.Length == TimeDigits + ChanceDigits && text.All(Digits.Contains);
}
