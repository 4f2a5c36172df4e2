using Trundle.Bench;

// `dotnet run --project bench/Trundle.Bench -c Release -- spin` compares the spin alone and keeps nothing.
if (args is ["spin"])
{
    SpinBench.Run(new Report());
    BoundBench.Run(new Report());
    return;
}

// With the word "choice", likewise the choice of weights.
if (args is ["choice"])
{
    ChoiceBench.Run(new Report());
    return;
}

// With the word "browser" and the folder that bench/ChoicePage was published under, the same in the browser.
if (args is ["browser", var page])
{
    BrowserBench.Run(page, new Report());
    return;
}

// With the word "entries" or "pages" and the folder that bench/run published to, the bay's server or its pages.
if (args is ["entries", var kept])
{
    EntryBench.Run(kept, new Report());
    return;
}

if (args is ["pages", var served])
{
    await FirstPageBench.RunAsync(served, new Report());
    return;
}

// bench/run publishes what is compared and calls this once: everything that is compared runs in one process, one after the other.
var published = args.Length > 0 ? args[0] : throw new ArgumentException("Give the folder that bench/run published to.");
var report = new Report();
StartBench.Run(published, report);
PageBench.Run(published, report);
CheckBench.Run(report);
MatchBench.Run(report);
SpinBench.Run(report);
BoundBench.Run(report);
ChoiceBench.Run(report);
BrowserBench.Run(published, report);
EntryBench.Run(published, report);
await FirstPageBench.RunAsync(published, report);
report.Write(args.Length > 1 ? args[1] : "bench/results");
