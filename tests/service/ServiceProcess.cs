using System.Diagnostics;
using System.Net.Http.Json;
using System.Text.Json;

namespace WireCoach.Service.Tests;

/// <summary>The service as a process of its own on a free loopback port, so that it can be killed.</summary>
internal sealed class ServiceProcess : IAsyncDisposable
{
    private readonly Process _process;
    private readonly Task<string> _errors;

    private ServiceProcess(Process process, HttpClient client, Task<string> errors) => (_process, Client, _errors) = (process, client, errors);

    public HttpClient Client { get; }

    /// <summary>The memory that the system holds for it, in MiB.</summary>
    public double Mebibytes
    {
        get
        {
            _process.Refresh();
            return _process.WorkingSet64 / 1048576.0;
        }
    }

    public static Process Run(string folder, string[] more) =>
        Run([], ["--Data:Folder", folder, .. more.Contains("--urls") ? more : ["--urls", "http://127.0.0.1:0", .. more]]);

    private static Process Run(string[] words, string[] settings) =>
        Run("dotnet", AppContext.BaseDirectory, [Path.Combine(AppContext.BaseDirectory, "WireCoach.Service.dll"), .. words, .. settings]);

    private static Process Run(string program, string workingFolder, string[] arguments)
    {
        var start = new ProcessStartInfo(program)
        {
            UseShellExecute = false,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            WorkingDirectory = workingFolder,
        };
        foreach (var argument in arguments)
        {
            start.ArgumentList.Add(argument);
        }

        return Process.Start(start)!;
    }

    public static Task<ServiceProcess> Start(string folder, params string[] more) => Started(Run(folder, more));

    /// <summary>Starts a published service from a folder that has nothing to do with it.</summary>
    public static Task<ServiceProcess> Published(string program, string folder) =>
        Started(Run(Path.Combine(program, "WireCoach.Service"), Path.GetTempPath(), ["--Data:Folder", folder, "--urls", "http://127.0.0.1:0"]));

    private static async Task<ServiceProcess> Started(Process process)
    {
        var errors = process.StandardError.ReadToEndAsync();
        while (await process.StandardOutput.ReadLineAsync() is { } line)
        {
            if (line.StartsWith("WireCoach listens on ", StringComparison.Ordinal))
            {
                _ = process.StandardOutput.ReadToEndAsync();
                return new(process, new HttpClient { BaseAddress = new Uri(line.Split(' ')[3]) }, errors);
            }
        }

        throw new InvalidOperationException($"The service did not start: {await errors}");
    }

    /// <summary>Runs it to its end and tells how it ended.</summary>
    public static Task<(int Code, string Output, string Errors)> Fail(string folder, params string[] more) => End(Run(folder, more));

    /// <summary>Runs a command of the program to its end.</summary>
    public static Task<(int Code, string Output, string Errors)> Command(string folder, params string[] words) => End(Run(words, ["--Data:Folder", folder]));

    private static async Task<(int Code, string Output, string Errors)> End(Process started)
    {
        using var process = started;
        process.StandardInput.Close();
        var (output, errors) = (process.StandardOutput.ReadToEndAsync(), process.StandardError.ReadToEndAsync());
        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(120));
        try
        {
            await process.WaitForExitAsync(patience.Token);
        }
        catch (OperationCanceledException late)
        {
            process.Kill();
            throw new InvalidOperationException($"The service started although it should not: {await output}", late);
        }

        return (process.ExitCode, await output, await errors);
    }

    public async Task<string> Open()
    {
        using var response = await Client.PostAsJsonAsync("/api/sessions", new { role = "technician", region = "na" });
        return (await Json(response)).GetProperty("id").GetString()!;
    }

    public async Task<JsonElement> Post(string path, object body)
    {
        using var response = await Client.PostAsJsonAsync(path, body);
        return await Json(response);
    }

    public async Task<JsonElement> Get(string path)
    {
        using var response = await Client.GetAsync(path);
        return await Json(response);
    }

    /// <summary>What a power cut or an angry administrator does.</summary>
    public async Task Kill()
    {
        _process.Kill();
        await _process.WaitForExitAsync();
    }

    /// <summary>Asks it to stop in order.</summary>
    public async Task<int> Stop()
    {
        using var term = Process.Start("kill", ["-TERM", $"{_process.Id}"]);
        await _process.WaitForExitAsync();
        return _process.ExitCode;
    }

    public async ValueTask DisposeAsync()
    {
        if (!_process.HasExited)
        {
            await Kill();
        }

        await _errors;
        Client.Dispose();
        _process.Dispose();
    }

    private static async Task<JsonElement> Json(HttpResponseMessage response)
    {
        var body = await response.Content.ReadAsStringAsync();
        if (!response.IsSuccessStatusCode)
        {
            throw new InvalidOperationException($"{(int)response.StatusCode} {body}");
        }

        using var json = JsonDocument.Parse(body);
        return json.RootElement.Clone();
    }
}
