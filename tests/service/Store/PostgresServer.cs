using System.Diagnostics;
using System.Net;
using System.Net.Sockets;

namespace WireCoach.Service.Tests.Store;

/// <summary>A PostgreSQL of these tests' own in a temporary folder, on loopback; it ends with them. Where none is installed, there is a reason instead.</summary>
public sealed class PostgresServer : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("wirecoach-pg-");
    private readonly string? _programs = Programs();
    private readonly string _port = FreePort();
    private int _databases;

    public PostgresServer()
    {
        if (_programs is null)
        {
            Missing = "PostgreSQL is not installed on this machine (looked for initdb in /usr/lib/postgresql/*/bin)";
            return;
        }

        if (Environment.IsPrivilegedProcess)
        {
            Run("chown", "nobody", _folder.FullName);
        }

        Run(Program("initdb"), "-D", Data, "-U", "wirecoach", "-A", "trust", "-E", "UTF8", "--locale=C", "--no-sync");
        Run(Program("pg_ctl"), "-D", Data, "-s", "-w", "-l", Path.Combine(Data, "server.log"), "-o", $"-h 127.0.0.1 -p {_port} -k {_folder.FullName}", "start");
    }

    /// <summary>Why there is no server.</summary>
    public string? Missing { get; }

    /// <summary>Where the server keeps its files.</summary>
    public string Data => Path.Combine(_folder.FullName, "data");

    /// <summary>The way to a new, empty database; without a server the test is skipped.</summary>
    public string NewDatabase()
    {
        Assert.SkipWhen(Missing is not null, Missing ?? string.Empty);
        var name = $"test{Interlocked.Increment(ref _databases)}";
        Run(Program("createdb"), "-h", "127.0.0.1", "-p", _port, "-U", "wirecoach", name);
        return $"Host=127.0.0.1;Port={_port};Username=wirecoach;Database={name};Timeout=5";
    }

    /// <summary>Stops the server as a power cut would: nothing is finished or written.</summary>
    public void Cut() => Run(Program("pg_ctl"), "-D", Data, "-s", "-w", "-m", "immediate", "stop");

    public void Start() =>
        Run(Program("pg_ctl"), "-D", Data, "-s", "-w", "-l", Path.Combine(Data, "server.log"), "-o", $"-h 127.0.0.1 -p {_port} -k {_folder.FullName}", "start");

    public void Dispose()
    {
        if (Missing is null)
        {
            Run(Program("pg_ctl"), "-D", Data, "-s", "-w", "-m", "immediate", "stop");
        }

        _folder.Delete(recursive: true);
    }

    private static string? Programs() => Directory.Exists("/usr/lib/postgresql")
        ? Directory.EnumerateDirectories("/usr/lib/postgresql").Order(StringComparer.Ordinal)
            .Select(version => Path.Combine(version, "bin")).LastOrDefault(bin => File.Exists(Path.Combine(bin, "initdb")))
        : null;

    private static string FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return $"{((IPEndPoint)listener.LocalEndpoint).Port}";
    }

    private string Program(string name) => Path.Combine(_programs!, name);

    /// <summary>PostgreSQL does not run as root: there its programs run as nobody.</summary>
    private void Run(string program, params string[] arguments)
    {
        var asNobody = Environment.IsPrivilegedProcess && program.StartsWith('/');
        var start = new ProcessStartInfo(asNobody ? "setpriv" : program) { WorkingDirectory = _folder.FullName, UseShellExecute = false };
        foreach (var argument in (string[])[.. asNobody ? ["--reuid=nobody", "--regid=nogroup", "--clear-groups", program] : Array.Empty<string>(), .. arguments])
        {
            start.ArgumentList.Add(argument);
        }

        start.Environment["LC_ALL"] = "C";
        using var process = Process.Start(start)!;
        process.WaitForExit();
        Assert.True(process.ExitCode == 0, $"{program} ended with {process.ExitCode}");
    }
}
