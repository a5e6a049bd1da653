using System.Text.RegularExpressions;

namespace WireCoach.Browser.Tests;

/// <summary>What a bad network has to carry before the first page stands.</summary>
public sealed class WeightTest(Bench bench)
{
    private const int MostBytes = 100 * 1024;
    private const int MostOwnScript = 20 * 1024;

    private static readonly Regex Linked = new("(?:src|href)=\"((?:_content|_framework)/[^\"]+)\"", RegexOptions.CultureInvariant, TimeSpan.FromSeconds(1));

    [Theory]
    [InlineData("/")]
    [InlineData("/practice")]
    [InlineData("/sessions")]
    [InlineData("/figures")]
    public async Task A_page_without_cache_weighs_no_more_than_a_bad_network_bears(string path)
    {
        using var http = new HttpClient { BaseAddress = bench.Address };
        http.DefaultRequestHeaders.Add("Accept-Encoding", "br, gzip");
        var page = await bench.Http.GetStringAsync(path, TestContext.Current.CancellationToken);
        var linked = Linked.Matches(page).Select(match => match.Groups[1].Value).Distinct(StringComparer.Ordinal).ToList();
        Assert.Contains(linked, asset => asset.EndsWith(".css", StringComparison.Ordinal));
        var (all, own) = ((await http.GetByteArrayAsync(path, TestContext.Current.CancellationToken)).Length, 0);
        foreach (var asset in linked)
        {
            var size = (await http.GetByteArrayAsync(asset, TestContext.Current.CancellationToken)).Length;
            all += size;
            own += asset.StartsWith("_content", StringComparison.Ordinal) && asset.EndsWith(".js", StringComparison.Ordinal) ? size : 0;
        }

        Assert.InRange(all, 1, MostBytes);
        Assert.InRange(own, 1, MostOwnScript);
    }
}
