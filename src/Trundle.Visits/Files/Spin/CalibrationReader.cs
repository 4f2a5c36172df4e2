using System.Globalization;
using System.Numerics;
using Trundle.Engine.Balance;
using Trundle.Engine.Balance.Spin;
using Trundle.Measures;

namespace Trundle.Visits.Files.Spin;

/// <summary>Reads a machine's calibration as <c>balance calibrate</c> writes it, or the places and forces of its supports.</summary>
internal static class CalibrationReader
{
    private const int MostSpeeds = 50;

    /// <summary>Reads the part; null where a problem was added. A whole answer of <c>balance calibrate</c> is taken as well.</summary>
    public static SpinCalibration? Read(FileObject o)
    {
        if (o.Has("calibration"))
        {
            o.Knows("speeds", "warnings", "cautions", "source", "status");
            var inner = o.Object("calibration")!;
            o.Done();
            return Read(inner);
        }

        var rotation = o.Require("rotation", "\"clockwise\" or \"anticlockwise\"") ? o.Word("rotation", ("clockwise", RotationSense.Clockwise), ("anticlockwise", RotationSense.Anticlockwise)) : null;
        var phases = o.Require("phases", "\"lag\" or \"lead\"") ? o.Word("phases", ("lag", PhaseSense.Lag), ("lead", PhaseSense.Lead)) : null;
        var planes = o.Require("planes", "the planes that the machine was calibrated in") && o.Object("planes") is { } p ? ReadPlanes(p) : null;
        var sense = new SpinSense(rotation ?? default, phases ?? default);
        SpinCalibration? calibration = null;
        if (o.Has("supports") == o.Has("speeds"))
        {
            o.Wrong("speeds", "missing", "Give 'speeds' with influence coefficients, as 'balance calibrate' writes them, or 'supports', one of the two.");
        }
        else if (o.Object("supports") is { } supports)
        {
            calibration = ReadSupports(supports, planes, sense);
        }
        else
        {
            var speeds = o.Objects("speeds").Take(MostSpeeds).Select(ReadSpeed).OfType<CalibratedSpeed>().ToList();
            if (o.Problems.Count == 0 && speeds.Count == 0)
            {
                o.Wrong("speeds", "missing", "There is no speed here; 'balance calibrate' writes them.");
            }
            else if (speeds.Select(s => s.Speed.Si).Distinct().Count() < speeds.Count)
            {
                o.Wrong("speeds", "speed-twice", "Two of the speeds are the same.");
            }

            calibration = o.Problems.Count == 0 ? SpinCalibration.Of(speeds, planes!, sense) : null;
        }

        o.Done();
        return calibration;
    }

    /// <summary>Two planes, each with <c>radius</c> and <c>axial</c>; as numbers under keys with their unit, as answers write them, too.</summary>
    public static PlanePair? ReadPlanes(FileObject o)
    {
        var (inner, outer) = (ReadPlane("inner"), ReadPlane("outer"));
        o.Done();
        if (inner is null || outer is null)
        {
            return null;
        }

        if (!PlanePair.LieApart(inner, outer))
        {
            o.Problems.Add(new Problem(o.PathOf("outer"), "planes-not-apart", "The outer plane lies further out than the inner one: axial grows from the inner to the outer side."));
            return null;
        }

        return new PlanePair(inner, outer);

        PlanePlace? ReadPlane(string side)
        {
            if (!o.Require(side, "give its radius and axial, for example {\"radius\": \"200 mm\", \"axial\": \"0 mm\"}") || o.Object(side) is not { } plane)
            {
                return null;
            }

            var radius = Measured(plane, "radius", "from the axis to the middle of the mass", Length.FromMillimetres(1));
            var axial = Measured(plane, "axial", "along the shaft, growing from the inner to the outer side", Length.FromMillimetres(-3000));
            plane.Done();
            return radius is { } r && axial is { } a ? new PlanePlace(r, a) : null;
        }

        static Length? Measured(FileObject plane, string key, string what, Length least) => plane.Has(key + "Millimetres")
            ? plane.Quantity<Length>(key + "Millimetres", "mm", least, Length.FromMillimetres(3000))
            : plane.Require(key, what) ? plane.Quantity<Length>(key, "mm", least, Length.FromMillimetres(3000)) : null;
    }

    private static CalibratedSpeed? ReadSpeed(FileObject o)
    {
        var speed = o.Require("speedRevolutionsPerMinute", "the speed of these coefficients") ? o.Number("speedRevolutionsPerMinute", 1, 10_000) : null;
        List<UnbalanceInfluence> inner = [];
        List<UnbalanceInfluence> outer = [];
        if (o.Require("influence", "the coefficients of the inner and the outer plane") && o.Object("influence") is { } influence)
        {
            (inner, outer) = (Plane("inner"), Plane("outer"));
            influence.Done();

            List<UnbalanceInfluence> Plane(string side)
            {
                influence.Require(side, "two coefficients, one for each transducer");
                var found = influence.Objects(side).Select(Coefficient).OfType<UnbalanceInfluence>().ToList();
                if (influence.Has(side) && influence.Items(side).Count != 2)
                {
                    influence.Wrong(side, "points-differ", string.Create(CultureInfo.InvariantCulture, $"There are {influence.Items(side).Count} coefficients here; two transducers take two."));
                }

                return found;
            }
        }

        List<double> misfit = [];
        if (o.Object("misfit") is { } left)
        {
            misfit = [.. new[] { "first", "second" }.Select(t => left.Require(t, "what the calibration spins left unexplained at this transducer") ? left.Number(t, 0) : null).OfType<double>()];
            left.Done();
        }

        var together = o.Object("together");
        var (withInner, withOuter, withMisfit) = (Correlation(together, "inner"), Correlation(together, "outer"), Correlation(together, "misfit"));
        together?.Done();
        o.Knows("conditionNumber");
        o.Done();
        return speed is { } s && inner.Count == 2 && outer.Count == 2
            ? new CalibratedSpeed(RotationalSpeed.FromRevolutionsPerMinute(s), inner, outer)
            {
                Misfit = misfit, MisfitCorrelation = withMisfit, InnerCorrelation = withInner, OuterCorrelation = withOuter,
            }
            : null;
    }

    /// <summary>How far the errors of both transducers go together; 0, independent, where it is not told.</summary>
    private static Complex Correlation(FileObject? together, string of)
    {
        if (together?.Object(of) is not { } o)
        {
            return Complex.Zero;
        }

        // A magnitude that was written as 1 may be read back a rounding above it.
        var magnitude = o.Require("magnitude", "how far the errors go together, 0 to 1") ? o.Number("magnitude", 0, 1 + 1e-9) : null;
        var degrees = o.Require("degrees", "the angle of the first transducer's error before the second's") ? o.Number("degrees", -720, 720) : null;
        o.Done();
        return Complex.FromPolarCoordinates(Math.Min(1, magnitude ?? 0), (degrees ?? 0) * Math.PI / 180);
    }

    private static UnbalanceInfluence? Coefficient(FileObject o)
    {
        var magnitude = o.Require("magnitudePerGramMillimetre", "what one g·mm gives") ? o.Number("magnitudePerGramMillimetre", 0) : null;
        var phase = o.Require("phaseDegrees", "its phase") ? o.Number("phaseDegrees", -720, 720) : null;
        var error = o.Has("standardErrorPerGramMillimetre") ? o.Number("standardErrorPerGramMillimetre", 0) : null;
        o.Done();
        return magnitude is { } m && phase is { } p ? new UnbalanceInfluence(m, Angle.FromDegrees(p)) { StandardErrorPerGramMillimetre = error } : null;
    }

    private static SpinCalibration? ReadSupports(FileObject o, PlanePair? planes, SpinSense sense)
    {
        var (first, second) = (Support("first"), Support("second"));
        var place = o.Require("placeAtMark", "the wheel's place, in degrees from its zero, that is under the transducers at the moment of the index mark")
            ? o.Quantity<Angle>("placeAtMark", "°", Angle.FromDegrees(-360), Angle.FromDegrees(360)) : null;
        o.Done();
        if (planes is null || first is null || second is null || place is null)
        {
            return null;
        }

        var calibration = SpinCalibration.OfSupports(first.Value, second.Value, WheelAngle.FromDegrees(place.Value.Degrees), planes, sense);
        if (calibration is null)
        {
            o.Wrong("second", "supports-not-apart", "Both supports stand at one place along the shaft; they cannot tell two planes.");
        }

        return calibration;

        (Length Axial, Force PerUnit)? Support(string key)
        {
            if (!o.Require(key, "give its axial place and the force for one unit of the recording") || o.Object(key) is not { } support)
            {
                return null;
            }

            var axial = support.Require("axial", "along the shaft, on the planes' axis") ? support.Quantity<Length>("axial", "mm", Length.FromMillimetres(-3000), Length.FromMillimetres(3000)) : null;
            var force = support.Require("forcePerUnit", "the force for one unit of the recording, for example \"20 N\"") ? support.Quantity<Force>("forcePerUnit", "N", Force.FromNewtons(1e-6), Force.FromNewtons(1e9)) : null;
            support.Done();
            return axial is { } a && force is { } f ? (a, f) : null;
        }
    }
}
