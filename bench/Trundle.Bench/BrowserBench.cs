using System.Diagnostics;
using System.Net;

namespace Trundle.Bench;

/// <summary>The choice of weights in this machine's Chromium, in WebAssembly as the bay runs it: a page of its own times it and sends the times back.</summary>
internal static class BrowserBench
{
    private static readonly string[] Browsers = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"];

    public static void Run(string published, Report report)
    {
        var browser = Browsers.First(File.Exists);
        var folder = Path.Combine(published, "choice", "wwwroot");
        using var listener = new HttpListener();
        var address = $"http://127.0.0.1:{FreePort()}/";
        listener.Prefixes.Add(address);
        listener.Start();
        var profile = Directory.CreateTempSubdirectory("trundle-bench-");
        using var process = Process.Start(new ProcessStartInfo(
            browser, ["--headless=new", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync", $"--user-data-dir={profile.FullName}", address])
        {
            RedirectStandardError = true,
            RedirectStandardOutput = true,
        })!;
        process.BeginErrorReadLine();
        process.BeginOutputReadLine();
        try
        {
            var times = Times(listener, folder);
            report.Table(
                "The choice of weights in the browser",
                $"Milliseconds. {Version(browser)}, headless, the engine published and trimmed as the bay's client is, without ahead-of-time code: a first call, and the median of 15 batches after it. Aim: 20 for a ten-spoke wheel.",
                ["wheel", "first call", "median", "proven"],
                times.Split('\n').Select(line => (IReadOnlyList<string>)line.Split('\t')));
        }
        finally
        {
            process.Kill(entireProcessTree: true);
            process.WaitForExit();
            profile.Delete(recursive: true);
        }
    }

    /// <summary>Serves the page until it sends its times.</summary>
    private static string Times(HttpListener listener, string folder)
    {
        var end = Stopwatch.StartNew();
        while (true)
        {
            var waiting = listener.GetContextAsync();
            if (!waiting.Wait(TimeSpan.FromMinutes(5) - end.Elapsed))
            {
                throw new InvalidOperationException("The page sent no times within five minutes.");
            }

            var context = waiting.Result;
            using var response = context.Response;
            if (context.Request.HttpMethod == "POST")
            {
                using var reader = new StreamReader(context.Request.InputStream);
                return reader.ReadToEnd();
            }

            var path = context.Request.Url!.AbsolutePath.TrimStart('/');
            var file = Path.Combine(folder, path.Length == 0 ? "index.html" : path);
            if (!File.Exists(file))
            {
                response.StatusCode = 404;
                continue;
            }

            response.ContentType = Path.GetExtension(file) switch
            {
                ".html" => "text/html",
                ".js" => "text/javascript",
                ".wasm" => "application/wasm",
                ".json" => "application/json",
                _ => "application/octet-stream",
            };
            response.OutputStream.Write(File.ReadAllBytes(file));
        }
    }

    private static string Version(string browser)
    {
        using var asked = Process.Start(new ProcessStartInfo(browser, ["--version"]) { RedirectStandardOutput = true })!;
        return asked.StandardOutput.ReadToEnd().Trim();
    }

    private static int FreePort()
    {
        using var socket = new System.Net.Sockets.TcpListener(IPAddress.Loopback, 0);
        socket.Start();
        return ((IPEndPoint)socket.LocalEndpoint).Port;
    }
}
