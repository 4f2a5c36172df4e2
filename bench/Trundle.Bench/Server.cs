using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Text.RegularExpressions;

namespace Trundle.Bench;

/// <summary>A server of its own process, stopped at the end, with what it holds of the machine's memory.</summary>
internal sealed partial class Server : IDisposable
{
    private readonly Process _process;

    private Server(Process process, Uri address) => (_process, Address) = (process, address);

    public Uri Address { get; }

    /// <summary>Starts a program and waits until its address answers.</summary>
    public static Server Start(string file, Uri address, params string[] arguments)
    {
        var process = Process.Start(new ProcessStartInfo(file, arguments) { RedirectStandardOutput = true, RedirectStandardError = true })!;
        process.OutputDataReceived += (_, _) => { };
        process.ErrorDataReceived += (_, _) => { };
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
        var server = new Server(process, address);
        using var client = new HttpClient();
        for (var tries = 0; ; tries++)
        {
            try
            {
                using var answer = client.GetAsync(address).GetAwaiter().GetResult();
                return server;
            }
            catch (HttpRequestException) when (tries < 300 && !process.HasExited)
            {
                Thread.Sleep(100);
            }
        }
    }

    /// <summary>What it holds in memory now, in MB.</summary>
    public double Megabytes => double.Parse(Held().Match(File.ReadAllText($"/proc/{_process.Id.ToString(CultureInfo.InvariantCulture)}/status")).Groups[1].Value, CultureInfo.InvariantCulture) / 1024;

    public static Uri FreeAddress()
    {
        using var socket = new System.Net.Sockets.TcpListener(IPAddress.Loopback, 0);
        socket.Start();
        return new Uri(FormattableString.Invariant($"http://127.0.0.1:{((IPEndPoint)socket.LocalEndpoint).Port}/"));
    }

    public void Dispose()
    {
        if (!_process.HasExited)
        {
            _process.Kill(entireProcessTree: true);
            _process.WaitForExit();
        }

        _process.Dispose();
    }

    [GeneratedRegex(@"VmRSS:\s+(\d+) kB")]
    private static partial Regex Held();
}
