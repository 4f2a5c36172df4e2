namespace Trundle.Browser.Tests;

/// <summary>Every page that a person can open, by the name of its pictures. What stands in brackets is an identifier of the demo.</summary>
internal static class EveryPage
{
    public static IReadOnlyList<(string Name, string Address)> All { get; } =
    [
        ("board", "/"), ("arrival", "/arrive"), ("search", "/search?q=DEMO"), ("history", "/history"), ("people", "/people"), ("rights", "/people/rights"),
        ("condemned", "/condemned"), ("re-torque", "/re-torque"), ("instruments", "/instruments"), ("instrument", "(instrument)"), ("sources", "/sources"),
        ("visit", "/visits/(visit)"), ("visit-arrival", "/visits/(visit)/arrival"), ("stock", "/stock"), ("scrap", "/scrap"), ("incidents", "/incidents"), ("fleet", "/fleet"),
        ("sets", "/sets?out=yes"), ("sets-new", "/sets/new"), ("set", "(set)"), ("registrations", "/registrations"), ("registration", "(sale)"),
        ("recall", "/recall?plant=1AB&code=&from=4021&to=2423"), ("procedures", "/procedures"),
        ("bay-arrive", "/bay/(visit)/arrive"), ("bay-axle", "/bay/(visit)/arrive/axle-1"), ("bay-came", "/bay/(visit)/arrive/came"),
        ("bay-look-over", "/bay/(visit)/lookOver"), ("bay-wheel", "/bay/(visit)/lookOver/1L"), ("bay-plan", "/bay/(visit)/plan"), ("bay-rotation", "/bay/(visit)/plan/rotation"),
        ("bay-jobs", "/bay/(visit)/plan/jobs"), ("bay-agreed", "/bay/(visit)/plan/agreed"), ("bay-off-the-car", "/bay/(visit)/offTheCar"), ("bay-seat", "/bay/(visit)/offTheCar/1L/seat"),
        ("bay-used", "/bay/(visit)/offTheCar/used"), ("bay-first-spin", "/bay/(standing)/offTheCar/1L/first-spin"), ("bay-why", "/bay/(visit)/wheel/1L/why"),
        ("bay-runout", "/bay/(visit)/wheel/1L/runout"), ("bay-leak", "/bay/(visit)/wheel/1R/leak"), ("bay-replace", "/bay/(visit)/plan/replace"),
        ("bay-refit", "/bay/(standing)/refit"), ("bay-stages", "/bay/(standing)/refit/1L/stages"), ("bay-prove", "/bay/(standing)/prove"),
        ("bay-final-torque", "/bay/(standing)/prove/1L/final-torque"), ("bay-hand-back", "/bay/(standing)/handBack"), ("bay-who", "/bay/(standing)/who"),
        ("tools", "/bay/tools"), ("tool-why", "/bay/tools/why"), ("tool-runout", "/bay/tools/runout"), ("tool-trial", "/bay/tools/trial"), ("tool-match", "/bay/tools/match"),
        ("tool-leak", "/bay/tools/leak"), ("tool-replace", "/bay/tools/replace"), ("tool-calibrate", "/bay/tools/calibrate"), ("tool-capture", "/bay/tools/capture"),
        ("tool-balancer", "/bay/tools/balancer"), ("practice", "/bay/practice"), ("practice-wheel", "/bay/practice/wheel/two-planes/11"),
        ("practice-measure", "/bay/practice/wheel/two-planes/11/measure"), ("practice-spin", "/bay/practice/wheel/behind-spokes/3/spin"),
        ("practice-tightening", "/bay/practice/drill/tightening/4"), ("practice-demount", "/bay/practice/drill/demount/9"), ("practice-drill", "/bay/practice/drill/tread/5"),
    ];

    /// <summary>The address of a page of the demo that runs.</summary>
    public static async Task<string> AddressAsync(Bay bay, string name)
    {
        var address = All.Single(p => p.Name == name).Address;
        foreach (var (token, found) in new (string, Func<Task<string>>)[]
        {
            ("(visit)", () => bay.VisitAsync("Blue hatchback")), ("(standing)", () => bay.VisitAsync("Grey saloon")), ("(instrument)", () => bay.LinkAsync("/instruments", "/instruments/")),
            ("(set)", () => bay.LinkAsync("/sets?out=yes", "/sets/")), ("(sale)", () => bay.LinkAsync("/registrations", "/registrations/")),
        })
        {
            address = address.Contains(token, StringComparison.Ordinal) ? address.Replace(token, await found(), StringComparison.Ordinal) : address;
        }

        return address;
    }
}
