using WireCoach.Rules.Reference;

namespace WireCoach.Rules.Safety;

/// <summary>Which caution is said first.</summary>
internal static class CautionOrder
{
    /// <summary>Greater is said earlier; a danger to life that is there now comes before a referral.</summary>
    public static int Weight(CautionNote note) => note.Level switch
    {
        "stop-get-qualified-person" when note.HowSoon == "now" => 4,
        "stop-and-fix" when note.HowSoon == "now" => 3,
        "stop-get-qualified-person" => 2,
        "stop-and-fix" => 1,
        _ => 0,
    };
}
