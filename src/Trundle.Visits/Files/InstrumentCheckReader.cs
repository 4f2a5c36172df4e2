using Trundle.Engine.Findings;
using Trundle.Engine.Instruments;
using Trundle.Measures;
using Trundle.Visits.Instruments;

namespace Trundle.Visits.Files;

/// <summary>A check of an instrument as read. The points are judged while they are read, since their quantity goes by the kind.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="By">Who checked it, or null.</param>
/// <param name="Certificate">The certificate's number, or null.</param>
/// <param name="Stated">What the certificate states, or null.</param>
/// <param name="Points">The points in words and numbers.</param>
/// <param name="OfPoints">What the points say.</param>
internal sealed record InstrumentCheckFile(
    InstrumentKind Kind, string? By, string? Certificate, InstrumentVerdict? Stated, IReadOnlyList<CheckedPoint> Points, InstrumentVerdict OfPoints);

/// <summary>A judged point as amounts.</summary>
internal sealed record CheckedPoint(Amount Reference, Amount Shown, Amount Deviation, double Percent, Limit? Permitted, bool? Within);

/// <summary>Reads the file of <c>instrument check</c>.</summary>
internal static class InstrumentCheckReader
{
    private const int MostPoints = 60;
    private static readonly (string, InstrumentKind)[] KindWords = [.. InstrumentWords.All.Select(k => (k.Word(), k))];

    /// <summary>Reads a file's root; null where a problem was added.</summary>
    public static InstrumentCheckFile? Read(FileNode root, List<Problem> problems)
    {
        var o = new FileObject(root, problems);
        var kind = o.Require("kind", "say what the instrument is: torque wrench, pressure gauge, depth gauge, balancer, lift, jack, stands, mounting machine, inflation gear, inflation cage or other") ? o.Word("kind", KindWords) : null;
        var (by, certificate) = (o.Text("by"), o.Text("certificate"));
        var stated = o.Word("stated", ("passed", InstrumentVerdict.Passed), ("failed", InstrumentVerdict.Failed));
        var points = o.Has("points") && kind is { } k ? Points(o, k) : ([], InstrumentVerdict.NotJudged);
        o.Knows("points", "permitted");
        if (!o.Has("points"))
        {
            if (o.Has("permitted"))
            {
                o.Wrong("points", "missing", "'permitted' is given without points; list what the reference said and what the instrument showed.");
            }
            else if (stated is null && problems.Count == 0)
            {
                o.Wrong("points", "missing", "There is nothing to judge here: list points, or say in 'stated' what the certificate states.");
            }
        }

        o.Done();
        return problems.Count == 0 && kind is { } read ? new InstrumentCheckFile(read, by, certificate, stated, points.Item1, points.Item2) : null;
    }

    private static (IReadOnlyList<CheckedPoint>, InstrumentVerdict) Points(FileObject o, InstrumentKind kind) => kind switch
    {
        InstrumentKind.TorqueWrench => Points<Torque>(o, "N·m", 1, PointCheck.OfTorqueWrench),
        InstrumentKind.PressureGauge => Points<GaugePressure>(o, "kPa", 1, _ => null),
        InstrumentKind.DepthGauge => Points<Length>(o, "mm", 2, _ => null),
        InstrumentKind.Balancer => Points<Mass>(o, "g", 1, _ => null),
        InstrumentKind.Lift or InstrumentKind.Jack or InstrumentKind.Stands or InstrumentKind.MountingMachine or InstrumentKind.InflationGear or InstrumentKind.Cage or InstrumentKind.Other => OfNoQuantity(o),
    };

    private static (IReadOnlyList<CheckedPoint>, InstrumentVerdict) OfNoQuantity(FileObject o)
    {
        o.Wrong("points", "no-quantity", "What this kind measures is not known here, so its points cannot be reckoned; say in 'stated' what the certificate or the inspection states.");
        return ([], InstrumentVerdict.NotJudged);
    }

    private static (IReadOnlyList<CheckedPoint>, InstrumentVerdict) Points<T>(FileObject o, string unit, int decimals, Func<T, PermittedDeviation<T>?> usual) where T : struct, IQuantity<T>
    {
        var permitted = o.Text("permitted") is { } text ? Permitted<T>(o, text) : null;
        var points = new List<ComparedPoint<T>>();
        foreach (var item in o.Objects("points"))
        {
            T? reference = item.Require("reference", "what the reference says") ? item.Quantity<T>("reference", unit) : null;
            T? shown = item.Require("shown", "what the instrument shows, or was set to") ? item.Quantity<T>("shown", unit) : null;
            if (reference is { Si: <= 0 })
            {
                item.Wrong("reference", "out-of-range", "A point lies above nothing.");
            }
            else if (reference is { } r && shown is { } s)
            {
                points.Add(new ComparedPoint<T>(r, s));
            }

            item.Done();
        }

        if (points.Count == 0 && o.Problems.Count == 0)
        {
            o.Wrong("points", "missing", "The list of points is empty.");
        }
        else if (points.Count > MostPoints)
        {
            o.Wrong("points", "too-many", $"There are more than {MostPoints} points.");
        }

        var judged = PointCheck.Judge(points, r => permitted ?? usual(r));
        return
        (
            [.. judged.Select(p => new CheckedPoint(
                Amount.Of(p.Point.Reference, unit, decimals), Amount.Of(p.Point.Shown, unit, decimals), Amount.Of(p.Deviation, unit, decimals + 1), p.Percent,
                p.Permitted is { } most ? new Limit(Amount.Of(most, unit, decimals + 1), p.Source!) : null, p.Within))],
            PointCheck.Verdict(judged)
        );
    }

    /// <summary>A percentage of the reference, or an amount with its unit: a bare number could be either.</summary>
    private static PermittedDeviation<T>? Permitted<T>(FileObject o, string text) where T : struct, IQuantity<T>
    {
        var source = Source.Entered("the permitted deviation given");
        if (text.EndsWith('%'))
        {
            var percent = NumberText.Read(text[..^1].Trim());
            if (percent is { IsRead: true, Value: > 0 and <= 50 })
            {
                return new PermittedDeviation<T>(percent.Value, null, source);
            }

            o.Wrong("permitted", "out-of-range", $"'{NumberText.Shown(text)}' is no percentage above 0 and up to 50; write for example \"4 %\".");
            return null;
        }

        return o.Quantity<T>("permitted") is { Si: > 0 } amount ? new PermittedDeviation<T>(null, amount, source) : Nothing<T>(o);
    }

    private static PermittedDeviation<T>? Nothing<T>(FileObject o) where T : struct, IQuantity<T>
    {
        if (o.Problems.Count == 0)
        {
            o.Wrong("permitted", "out-of-range", "A permitted deviation of nothing can never be met; give how far it may be off.");
        }

        return null;
    }
}
