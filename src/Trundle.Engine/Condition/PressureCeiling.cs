using Trundle.Engine.Findings;
using Trundle.Engine.Fitment;
using Trundle.Engine.InUse;
using Trundle.Engine.Reference;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Condition;

/// <summary>A pressure, found or asked for by a placard, against the greatest on the sidewall and the greatest that is listed for any tyre of its class.</summary>
internal static class PressureCeiling
{
    /// <summary>What is asked for where nobody entered it.</summary>
    public const string Maximum = "the greatest pressure on the sidewall (MAX PRESS)";

    /// <summary>The greatest pressure listed for any tyre of the class that stands at a position; null for a class of which no list is held.</summary>
    public static InUseLimit? OfClass(FittedVehicle subject, Position position) => subject.InForce.LimitOrNone("pressure.above-class", new RulePoint(subject, position));

    public static void Check(CheckBook book, Assembly assembly)
    {
        var at = assembly.Position.ToString();
        var placard = book.Vehicle.PlacardOf(assembly);
        var ofClass = OfClass(book.Subject, assembly.Position);
        if (assembly.Tyre is { MaximumPressure: null } && (assembly.Pressure is not null || placard?.Cold is not null))
        {
            book.Need(at, Maximum, "no pressure is let in, found or left above it");
        }

        if (ofClass is not null && new[] { placard?.Cold, placard?.Laden }.OfType<GaugePressure>().DefaultIfEmpty().Max() is { } asked && ofClass.IsBrokenBy(asked.Kilopascals))
        {
            book.Judge("pressure.placard-doubt", at, true, Kilopascals(asked), ofClass.Limit);
        }

        if (assembly.Pressure is not { } found)
        {
            return;
        }

        // Running heats a tyre by a known amount; what is above the limit by more than that was let in.
        var value = found.Hot ? found.Value - Figures.Of("pressure.hot-addition").As<GaugePressure>() : found.Value;
        book.ByWorkshop(JudgedQuantity.ColdPressure, assembly.Position, at, value.Kilopascals, Kilopascals(found.Value));
        if (assembly.Tyre?.MaximumPressure is { } most && value > most)
        {
            book.Judge("pressure.sidewall", at, true, Kilopascals(found.Value), new Limit(Kilopascals(most), Source.Entered("the sidewall's MAX PRESS, as entered")));
        }
        else if (ofClass?.IsBrokenBy(value.Kilopascals) == true)
        {
            book.Judge("pressure.above-class", at, true, Kilopascals(found.Value), ofClass.Limit);
        }
    }

    private static Amount Kilopascals(GaugePressure pressure) => Amount.Of(pressure, "kPa", 0);
}
