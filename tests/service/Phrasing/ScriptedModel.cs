using System.Net;
using System.Net.Sockets;
using System.Text;
using System.Text.Json;

namespace WireCoach.Service.Tests.Phrasing;

/// <summary>A model server on loopback that does what a test tells it, also what no server should.</summary>
internal sealed class ScriptedModel : IAsyncDisposable
{
    private readonly TcpListener _listener = new(IPAddress.Loopback, 0);
    private readonly CancellationTokenSource _stop = new();
    private readonly Task _running;
    private int _requests;

    public ScriptedModel(Func<NetworkStream, CancellationToken, Task> script)
    {
        _listener.Start();
        _running = Run(script);
    }

    public string Address => $"127.0.0.1:{((IPEndPoint)_listener.LocalEndpoint).Port}/v1";

    public int Requests => _requests;

    public string LastRequest { get; private set; } = "";

    public string AllRequests { get; private set; } = "";

    /// <summary>A plain answer.</summary>
    public static Func<NetworkStream, CancellationToken, Task> Answers(int status, string type, string body) => (stream, cancel) =>
        Write(stream, $"HTTP/1.1 {status} X\r\nContent-Type: {type}\r\nConnection: close\r\nContent-Length: {Encoding.UTF8.GetByteCount(body)}\r\n\r\n{body}", cancel);

    /// <summary>A stream that says the text and ends as told.</summary>
    public static Func<NetworkStream, CancellationToken, Task> Says(string text, string finish = "stop") =>
        Answers(200, "text/event-stream", Piece(text) + Piece("", finish) + "data: [DONE]\n\n");

    public static string Piece(string text, string? finish = null) =>
        $"data: {{\"id\":\"x\",\"object\":\"chat.completion.chunk\",\"created\":1,\"model\":\"m\",\"choices\":[{{\"index\":0,\"delta\":{{\"role\":\"assistant\",\"content\":{JsonSerializer.Serialize(text)}}},\"finish_reason\":{(finish is null ? "null" : $"\"{finish}\"")}}}]}}\n\n";

    public static Task Begin(NetworkStream stream, CancellationToken cancel) =>
        Write(stream, "HTTP/1.1 200 OK\r\nContent-Type: text/event-stream\r\nConnection: close\r\n\r\n", cancel);

    public static async Task Write(NetworkStream stream, string text, CancellationToken cancel) =>
        await stream.WriteAsync(Encoding.UTF8.GetBytes(text), cancel);

    public async ValueTask DisposeAsync()
    {
        await _stop.CancelAsync();
        _listener.Dispose();
        await _running;
        _stop.Dispose();
    }

    private async Task Run(Func<NetworkStream, CancellationToken, Task> script)
    {
        var serving = new List<Task>();
        try
        {
            while (true)
            {
                var client = await _listener.AcceptTcpClientAsync(_stop.Token);
                Interlocked.Increment(ref _requests);
                serving.Add(Serve(client, script));
            }
        }
        catch (Exception ended) when (ended is OperationCanceledException or SocketException or ObjectDisposedException or InvalidOperationException)
        {
        }

        await Task.WhenAll(serving);
    }

    private async Task Serve(TcpClient client, Func<NetworkStream, CancellationToken, Task> script)
    {
        try
        {
            using var held = client;
            var stream = client.GetStream();
            var buffer = new byte[16384];
            var request = new StringBuilder();
            do
            {
                var read = await stream.ReadAsync(buffer, _stop.Token);
                request.Append(Encoding.UTF8.GetString(buffer, 0, read));
                if (read == 0)
                {
                    break;
                }
            }
            while (!IsWhole(request.ToString()));
            LastRequest = request.ToString();
            AllRequests += LastRequest;
            await script(stream, _stop.Token);
        }
        catch (Exception ended) when (ended is IOException or OperationCanceledException)
        {
            // The caller hung up, as it should, or the test is over.
        }
    }

    private static bool IsWhole(string request)
    {
        var end = request.IndexOf("\r\n\r\n", StringComparison.Ordinal);
        var length = System.Text.RegularExpressions.Regex.Match(request, "content-length: *([0-9]+)", System.Text.RegularExpressions.RegexOptions.IgnoreCase, TimeSpan.FromSeconds(1));
        return !request.StartsWith("POST", StringComparison.Ordinal) || (end >= 0 && (length.Success ? Encoding.UTF8.GetByteCount(request[(end + 4)..]) >= int.Parse(length.Groups[1].Value) : request.EndsWith("0\r\n\r\n", StringComparison.Ordinal)));
    }
}
