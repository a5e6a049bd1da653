using System.Net.Sockets;
using System.Text;

namespace WireCoach.Service.Tests.Hosting;

/// <summary>A caller that never finishes its request, or sends too much of a header, is let go, and nobody waits for it.</summary>
public sealed class SlowClientsTest : DataFolderTest
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(120);

    [Fact]
    public async Task Who_does_not_finish_is_let_go_while_others_are_answered()
    {
        await using var service = await ServiceProcess.Start(Folder);
        var host = service.Client.BaseAddress!;
        var dribbling = Enumerable.Range(0, 30).SelectMany(_ => (Task<string>[])
        [
            Hang(host, $"GET / HTTP/1.1\r\nHost: {host.Authority}\r\nX-Slow: "),
            Hang(host, $"POST /api/sessions HTTP/1.1\r\nHost: {host.Authority}\r\nContent-Type: application/json\r\nContent-Length: 900\r\n\r\n{{"),
        ]).ToList();
        for (var number = 0; number < 20; number++)
        {
            await service.Open();
        }

        var answers = await Task.WhenAll(dribbling); // each ends by the service's doing
        Assert.All(answers, answer => Assert.True(answer.Length == 0 || answer.StartsWith("HTTP/1.1 408", StringComparison.Ordinal), answer));
        await service.Open();
    }

    [Fact]
    public async Task A_header_that_is_too_long_is_refused()
    {
        await using var service = await ServiceProcess.Start(Folder);
        var host = service.Client.BaseAddress!;
        Assert.StartsWith("HTTP/1.1 431", await Hang(host, $"GET / HTTP/1.1\r\nHost: {host.Authority}\r\nX-Long: {new string('x', 20_000)}\r\n\r\n"), StringComparison.Ordinal);
    }

    /// <summary>Sends what is no whole request and reads until the other side closes.</summary>
    private static async Task<string> Hang(Uri host, string begun)
    {
        using var socket = new TcpClient();
        await socket.ConnectAsync(host.Host, host.Port, TestContext.Current.CancellationToken);
        await using var stream = socket.GetStream();
        await stream.WriteAsync(Encoding.ASCII.GetBytes(begun), TestContext.Current.CancellationToken);
        using var reader = new StreamReader(stream, Encoding.ASCII);
        try
        {
            return await reader.ReadToEndAsync(TestContext.Current.CancellationToken).WaitAsync(Patience, TestContext.Current.CancellationToken);
        }
        catch (IOException)
        {
            return string.Empty; // closed hard
        }
    }
}
