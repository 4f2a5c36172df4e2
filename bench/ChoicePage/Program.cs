using System.Diagnostics;
using System.Globalization;
using Microsoft.AspNetCore.Components.WebAssembly.Hosting;
using Trundle.Bench;
using Trundle.Engine.Balance;

// Each wheel's choice once cold, then in batches long enough for a browser's clock; one line a wheel is sent to where the page came from.
var builder = WebAssemblyHostBuilder.CreateDefault(args);
using var http = new HttpClient { BaseAddress = new Uri(builder.HostEnvironment.BaseAddress) };
var lines = new List<string>();
foreach (var (name, problem) in ChoiceWheels.All)
{
    var watch = Stopwatch.StartNew();
    var proven = BalanceSolve.Run(problem).ProvenOptimal;
    var first = watch.Elapsed.TotalMilliseconds;
    var batch = Math.Max(1, (int)Math.Ceiling(20 / Math.Max(first, 0.1)));
    var took = new List<double>();
    for (var i = 0; i < 15; i++)
    {
        watch.Restart();
        for (var n = 0; n < batch; n++)
        {
            BalanceSolve.Run(problem);
        }

        took.Add(watch.Elapsed.TotalMilliseconds / batch);
    }

    took.Sort();
    lines.Add(string.Create(CultureInfo.InvariantCulture, $"{name}\t{first:F1}\t{took[took.Count / 2]:F2}\t{(proven ? "yes" : "NO")}"));
}

using var content = new StringContent(string.Join('\n', lines));
await http.PostAsync(new Uri("times", UriKind.Relative), content);
