using System.Globalization;
using System.Text;
using Trundle.Engine.Pressure;
using Trundle.Measures;

namespace Trundle.Visits.Pictures;

/// <summary>What a drawing of a loss of pressure shows.</summary>
/// <param name="Title">What a screen reader calls it.</param>
/// <param name="Loss">The readings and the line through them.</param>
/// <param name="Warning">The pressure at which the vehicle warns, or null.</param>
/// <param name="Until">How long until then, or null.</param>
/// <param name="Expected">The coldest temperature expected, or null.</param>
/// <param name="Unit">The reader's unit of pressure.</param>
public sealed record LossView(string Title, PressureLoss Loss, GaugePressure? Warning, TimeToPressure? Until, Temperature? Expected, string Unit);

/// <summary>
/// Pressure over time. Filled dots are the readings brought to one temperature, hollow ones what the gauge showed; the line runs through the filled
/// ones, its 95 % band is washed, and where the band crosses the dashed warning is the range of days in which the warning comes.
/// </summary>
public static class LossOverTime
{
    private const double Width = 620;
    private const double Height = 330;
    private const double Left = 58;
    private const double Right = 606;
    private const double Top = 22;
    private const double Bottom = 270;
    private const int Steps = 48;

    // The readings keep at least this part of the width, however long the warning takes.
    private const double Past = 0.2;

    /// <summary>The drawing, 620 by 330.</summary>
    public static string Draw(string id, LossView view)
    {
        ArgumentNullException.ThrowIfNull(view);
        var svg = new Svg(id, Width, Height, view.Title, Describe(view));
        var (first, last, end) = (view.Loss.Points[0].Reading.At, view.Loss.Points[^1].Reading.At, End(view));
        var cold = view is { Warning: { } at, Expected: { } expected } ? view.Loss.AtReference(at, expected) : (GaugePressure?)null;
        var level = LevelStart(view.Loss);
        DateTime[] times = [.. Enumerable.Range(0, Steps + 1).Select(i => level + ((end - level) * i / Steps))];
        var lines = times.Select(view.Loss.At).ToList();

        var shown = view.Loss.Points.SelectMany(p => new[] { p.Reading.Value, p.AtReference }).Concat(new[] { view.Warning, cold }.OfType<GaugePressure>()).ToList();
        var step = Step(shown.Max().In(view.Unit) - shown.Min().In(view.Unit));
        var low = Math.Max(0, (Math.Floor(shown.Min().In(view.Unit) / step) - 0.5) * step);
        var high = (Math.Ceiling(shown.Max().In(view.Unit) / step) + 0.25) * step;
        double X(DateTime time) => Left + ((time - first) / (end - first) * (Right - Left));
        double Y(GaugePressure pressure) => Bottom - (Math.Clamp((pressure.In(view.Unit) - low) / (high - low), 0, 1) * (Bottom - Top));

        Scale(svg, low, high, step, view.Unit);
        svg.Path($"M{string.Join('L', times.Select((t, i) => $"{Svg.N(X(t))} {Svg.N(Y(lines[i].High))}").Concat(times.Select((t, i) => $"{Svg.N(X(t))} {Svg.N(Y(lines[i].Low))}").Reverse()))}z", Svg.Wash, "none");
        Dates(svg, view, X);
        Warnings(svg, view, cold, Y);
        foreach (var group in Levels(view.Loss).SkipLast(1))
        {
            svg.Path($"M{string.Join('L', group.Select(p => $"{Svg.N(X(p.Reading.At))} {Svg.N(Y(p.AtReference - p.OffLine))}"))}", "none", Svg.Accent, 2.5);
        }

        svg.Path($"M{string.Join('L', Drawn(times, lines, last).Select(p => $"{Svg.N(X(p.Time))} {Svg.N(Y(p.At))}"))}", "none", Svg.Accent, 2.5);
        svg.Path($"M{string.Join('L', times.Select((t, i) => (t, i)).Where(p => p.t >= last).Select(p => $"{Svg.N(X(p.t))} {Svg.N(Y(lines[p.i].Estimate))}"))}", "none", Svg.Accent, 1.5, "6 4");
        foreach (var point in view.Loss.Points)
        {
            var (x, shownAt, brought) = (X(point.Reading.At), Y(point.Reading.Value), Y(point.AtReference));
            svg.Line(x, shownAt, x, brought, Svg.Soft, 0.75);
            svg.Circle(x, shownAt, 4, Svg.Card, Svg.Soft, 1.25).Circle(x, brought, 4, Svg.Ink, "none");
        }

        Range(svg, view, end, X, Y);
        svg.Words(Left, 322, $"● at {view.Loss.Reference.Text("°C", 0)}   ○ as the gauge showed", 13, "start", Svg.Soft);
        return svg.End();
    }

    /// <summary>In words.</summary>
    public static string Describe(LossView view)
    {
        ArgumentNullException.ThrowIfNull(view);
        var loss = view.Loss;
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"{loss.Points.Count} readings from {Day(loss.Points[0].Reading.At)} to {Day(loss.Points[^1].Reading.At)}, brought to {loss.Reference.Text("°C", 0)}: from {Words(loss.Points[0].AtReference, view)} to {Words(loss.Points[^1].AtReference, view)}. ");
        text.Append(CultureInfo.InvariantCulture, $"The line is at {Words(loss.Now, view)} now. ");
        text.Append(view switch
        {
            { Warning: null } => "The warning pressure is not known.",
            { Until.Reached: true } => $"The warning at {Words(view.Warning.Value, view)} is reached already.",
            { Until.Estimate: { } days } => string.Create(CultureInfo.InvariantCulture, $"The line meets the warning at {Words(view.Warning.Value, view)} after {days.TotalDays:0} days; the band lets it come from {(view.Until.Earliest is { } early ? $"{early.TotalDays:0} days" : "ten years")} to {(view.Until.Latest is { } late ? $"{late.TotalDays:0} days" : "no time that can be told")}."),
            _ => $"The line does not meet the warning at {Words(view.Warning.Value, view)} within ten years.",
        });
        return text.ToString();
    }

    /// <summary>Until the latest time of the warning where that leaves the readings room; else as far as it does.</summary>
    private static DateTime End(LossView view)
    {
        var (first, last) = (view.Loss.Points[0].Reading.At, view.Loss.Points[^1].Reading.At);
        var most = (last - first) * ((1 / Past) - 1);
        var wanted = view.Until is { Reached: false } until ? (until.Latest ?? until.Estimate ?? until.Earliest) * 1.1 : null;
        var ahead = wanted is { } w && w < most ? w : view.Until is { Reached: false, Estimate: { } estimate } && estimate * 1.1 < most ? most : (last - first) / 2;
        var least = (last - first) / 4;
        return DateTime.MaxValue - last > ahead ? last + (ahead > least ? ahead : least) : last;
    }

    private static DateTime LevelStart(PressureLoss loss) => Levels(loss)[^1][0].Reading.At;

    /// <summary>The readings between which no air was let in or out.</summary>
    private static List<List<LossPoint>> Levels(PressureLoss loss)
    {
        var levels = new List<List<LossPoint>>();
        foreach (var point in loss.Points)
        {
            if (levels.Count == 0 || point.Reading.AirChanged)
            {
                levels.Add([]);
            }

            levels[^1].Add(point);
        }

        return levels;
    }

    private static IEnumerable<(DateTime Time, GaugePressure At)> Drawn(DateTime[] times, List<LossLine> lines, DateTime last) =>
        times.Select((t, i) => (Time: t, At: lines[i].Estimate)).TakeWhile((p, i) => i == 0 || times[i - 1] < last);

    private static void Scale(Svg svg, double low, double high, double step, string unit)
    {
        for (var value = Math.Ceiling(low / step) * step; value <= high; value += step)
        {
            var y = Bottom - ((value - low) / (high - low) * (Bottom - Top));
            svg.Line(Left, y, Right, y, Svg.Hairline, 0.75);
            svg.Words(Left - 6, y + 4.5, Quantity.Number(value, step < 1 ? 1 : 0), 13, "end", Svg.Soft);
        }

        svg.Line(Left, Top, Left, Bottom, Svg.Ink, 1).Line(Left, Bottom, Right, Bottom, Svg.Ink, 1);
        svg.Words(Left - 6, 14, unit, 13, "end", Svg.Soft);
    }

    private static void Dates(Svg svg, LossView view, Func<DateTime, double> x)
    {
        var (first, last) = (view.Loss.Points[0].Reading.At, view.Loss.Points[^1].Reading.At);
        svg.Words(x(first), 288, Day(first), 13, "start", Svg.Soft);
        svg.Line(x(last), Bottom, x(last), Bottom + 6, Svg.Ink);
        if (x(last) - x(first) > 175)
        {
            svg.Words(x(last), 288, Day(last), 13, "middle", Svg.Soft);
        }
        else
        {
            svg.Words(x(last), 304, Day(last), 13, x(last) - Left < 40 ? "start" : "middle", Svg.Soft);
        }
    }

    private static void Warnings(Svg svg, LossView view, GaugePressure? cold, Func<GaugePressure, double> y)
    {
        if (view.Warning is not { } warning)
        {
            return;
        }

        svg.Line(Left, y(warning), Right, y(warning), Svg.Ink, 1.25, "5 3");
        svg.Words(Left + 6, y(warning) + 15, $"warning {Words(warning, view)}", 13, "start", Svg.Ink, true);
        if (cold is { } above)
        {
            svg.Line(Left, y(above), Right, y(above), Svg.Soft, 1, "1.5 3");
            svg.Words(Right, y(above) - 5, $"the same at {view.Expected!.Value.Text("°C", 0)}", 13, "end", Svg.Soft);
        }
    }

    /// <summary>From the earliest to the latest day of the warning, on its line, with the day by the line itself.</summary>
    private static void Range(Svg svg, LossView view, DateTime end, Func<DateTime, double> x, Func<GaugePressure, double> y)
    {
        if (view is not { Warning: { } warning, Until: { Reached: false, Estimate: { } days } until })
        {
            return;
        }

        var last = view.Loss.Points[^1].Reading.At;
        double At(TimeSpan after) => end - last > after ? x(last + after) : Right;
        if (until.Earliest is { } early)
        {
            var (from, to) = (At(early), until.Latest is { } late ? At(late) : Right);
            svg.Line(from, y(warning), to, y(warning), Svg.Ink, 4);
        }

        if (end - last > days)
        {
            var at = At(days);
            svg.Line(at, y(warning) - 8, at, Bottom + 6, Svg.Ink, 1.5);
            svg.Words(at, 288, Day(last + days), 13, at > Right - 40 ? "end" : "middle", Svg.Ink, true);
        }
    }

    /// <summary>Some five lines of a whole step of one, two or five.</summary>
    private static double Step(double span)
    {
        var rough = Math.Max(span, 1e-3) / 5;
        var ten = Math.Pow(10, Math.Floor(Math.Log10(rough)));
        return new[] { 1.0, 2, 5, 10 }.First(s => s * ten >= rough * 0.999) * ten;
    }

    private static string Words(GaugePressure pressure, LossView view) => pressure.Text(view.Unit, view.Unit switch { "psi" => 1, "bar" => 2, _ => 0 });

    private static string Day(DateTime at) => at.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
