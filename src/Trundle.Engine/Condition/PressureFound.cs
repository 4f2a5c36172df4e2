using System.Globalization;
using Trundle.Engine.Findings;
using Trundle.Engine.Fitment;
using Trundle.Engine.InUse;
using Trundle.Engine.Mounting;
using Trundle.Engine.Pressure;
using Trundle.Engine.Reference;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Condition;

/// <summary>The pressure found, against the placard and the sidewall. How far it may be too high for the load carried is the pressure check's.</summary>
internal static class PressureFound
{
    public static void Check(CheckBook book, Assembly assembly)
    {
        var at = assembly.Position.ToString();
        PressureCeiling.Check(book, assembly);
        if (assembly.Pressure is not { } found)
        {
            book.Need(at, "the pressure as found, and whether the tyre was hot", "it is held against the placard");
            return;
        }

        // On a rim of several pieces nobody follows an advice about air before the stop.
        var stop = SeveralPieces.Finding(book.Subject, assembly)?.Action;
        if (Flat(book, assembly, at, found, stop))
        {
            return;
        }

        var placard = book.Vehicle.PlacardOf(assembly);
        if (placard?.Cold is not { } cold)
        {
            BelowLoad(book, assembly, at, found, null, Kilopascals(found.Value), stop);
            var temporary = !assembly.Position.IsSpare && book.Vehicle.PlacardAt(assembly.Position)?.Cold is not null;
            book.Need(assembly.Position.IsSpare || temporary ? at : CheckBook.AxleName(assembly.Position.Axle),
                temporary ? "the temporary spare's own cold pressure, from its sidewall or the placard (vehicle.spare)" : "the placard's cold pressure", "the pressure found is held against it");
            return;
        }

        var entered = Source.Entered("the vehicle's placard, as entered");
        var reference = Figures.Of("condition.reference-temperature");
        var judged = JudgedReading.Of(found, new SourcedPressure(cold, entered), book.Subject.Ambient ?? reference.As<Temperature>());
        judged = stop is null ? judged : judged with { Advice = $"{stop} Then: {judged.Advice}" };
        var limit = new Limit(Kilopascals(cold), entered);
        var percent = (judged.ColdEquivalent ?? found.Value) / cold * 100;
        var measured = new Amount(found.Value.Kilopascals, "kPa", string.Create(CultureInfo.InvariantCulture, $"{found.Value.Text("kPa", 0)}{(found.Hot ? ", hot" : "")}{(judged.ColdEquivalent is { } counted ? $", counted back to cold {counted.Text("kPa", 0)}" : "")}: {Written(percent)} % of the placard"));
        book.ByWorkshop(JudgedQuantity.PressureShare, assembly.Position, at, percent, measured);
        if (TakenAsRunLow(book, assembly, at, measured, percent, stop))
        {
            return;
        }

        if (BelowLoad(book, assembly, at, found, placard, measured, stop))
        {
            return;
        }

        switch (judged.Verdict)
        {
            case ReadingVerdict.RunLow:
                // Run low by the carried figure, not by the workshop's, who put it right.
                book.Judge("pressure.low", at, true, measured, limit);
                break;
            case ReadingVerdict.HotLow:
                // Hot and still low: how low, only a cold reading tells. A person decides.
                book.Judge("pressure.hot-low", at, true, measured, limit, judged.Advice);
                break;
            case ReadingVerdict.Low:
                book.Judge("pressure.low", at, !judged.WithinMonthsLoss, measured, limit, judged.Advice);
                break;
            case ReadingVerdict.High when placard.Laden is { } laden && found.Value <= laden:
                book.Judge("pressure.high", at, false, measured, new Limit(Kilopascals(laden), entered), "Between the placard's cold and laden pressure: right for a loaded vehicle, else let air out to the cold one.");
                break;
            case ReadingVerdict.High when NeededByThisTyre(book, assembly, placard) is { } needed && found.Value.Pascals <= needed.Pressure.Pascals + Figures.Of("pressure.reading-resolution").As<GaugePressure>().Pascals:
                book.Judge("pressure.high", at, false, measured, new Limit(Kilopascals(needed.Pressure), needed.Source), "Above the placard's, and right: another tyre than the placard's needs it to carry as much.");
                break;
            case ReadingVerdict.High:
                book.Judge("pressure.high", at, true, measured, limit, judged.Advice);
                break;
            case ReadingVerdict.HotLeave:
                book.Judge("pressure.hot", at, false, measured, limit, judged.Advice);
                break;
            case ReadingVerdict.OnTarget or ReadingVerdict.NothingToCompare:
                book.Judge("pressure.low", at, false, measured, limit);
                break;
        }
    }

    /// <summary>What a tyre that ran low is found against, given what it is of its placard's cold pressure: one answer wherever a reading is judged; null where it did not run low.</summary>
    internal static Finding? RanLow(FittedVehicle subject, Assembly assembly, PressureReading found, double percent, Amount measured)
    {
        var book = new CheckBook(subject);
        var stop = SeveralPieces.Finding(subject, assembly)?.Action;
        var at = assembly.Position.ToString();
        return Flat(book, assembly, at, found, stop) || TakenAsRunLow(book, assembly, at, measured, percent, stop) ? book.Result().Findings[0] : null;
    }

    /// <summary>No air at all: run low by any placard, known or not.</summary>
    private static bool Flat(CheckBook book, Assembly assembly, string at, PressureReading found, string? stop)
    {
        if (found.Value.Kilopascals > Figures.Of("pressure.reading-resolution").As<GaugePressure>().Kilopascals)
        {
            return false;
        }

        book.Judge("pressure.flat", at, true, Kilopascals(found.Value), null, stop is null ? null : $"{stop} Then: {book.Rule("pressure.flat").Action}", [.. RunLow.Cautions(assembly.Tyre)]);
        return true;
    }

    /// <summary>Run low, or so low that the warning must light; for a truck tyre the one rule that keeps hands off the valve comes first.</summary>
    private static bool TakenAsRunLow(CheckBook book, Assembly assembly, string at, Amount measured, double percent, string? stop)
    {
        var heavy = assembly.Tyre?.Marking?.Size.TyreClass == Sidewall.TyreClass.Truck;
        foreach (var rule in heavy ? (string[])["pressure.run-low-truck"] : ["pressure.warning", "pressure.run-low"])
        {
            // No warning watches the spare, dual wheels, a trailer or a motorcycle: there the warning has no limit.
            if (book.LimitOrNone(rule, assembly.Position) is { } limit && limit.IsBrokenBy(percent))
            {
                book.Judge(rule, at, true, measured, limit.Limit, stop is null ? null : $"{stop} Then: {book.Rule(rule).Action}", [.. RunLow.Cautions(assembly.Tyre)]);
                return true;
            }
        }

        return false;
    }

    /// <summary>Below what the load carried needs, read cold, where a law asks for that: then it is more than a little low.</summary>
    private static bool BelowLoad(CheckBook book, Assembly assembly, string at, PressureReading found, Placard? placard, Amount measured, string? stop)
    {
        if (found.Hot || book.InForce.LawOf("pressure.below-load", book.Subject) is not { } law || WheelLoad.On(book.Subject, assembly.Position) is not { } carried)
        {
            return false;
        }

        var needed = ColdPressure.For(assembly, placard, carried.Load, book.Vehicle, new PressureConditions(null, null, null, null, false, book.Rules)).ForLoad;
        if (needed?.Pressure is not { } least || found.Value.Pascals >= least.Pascals - Figures.Of("pressure.reading-resolution").As<GaugePressure>().Pascals)
        {
            return false;
        }

        book.Judge(law, at, true, measured, new Limit(Kilopascals(least), needed.Source), stop is null ? null : $"{stop} Then: {law.Action}");
        return true;
    }

    /// <summary>What a tyre of another kind than the placard's needs to carry what the placard's would; null where the placard's own figure is the most that is asked.</summary>
    private static SourcedPressure? NeededByThisTyre(CheckBook book, Assembly assembly, Placard placard) =>
        ColdPressure.For(assembly, placard, null, book.Vehicle, new PressureConditions(null, null, null, null, false, book.Rules)).Pressure is { } needed && needed.Pressure > placard.Cold!.Value ? needed : null;

    private static Amount Kilopascals(GaugePressure pressure) => Amount.Of(pressure, "kPa", 0);

    /// <summary>In whole per cent, and finer where that would read as one of the limits and the value is beside it.</summary>
    private static string Written(double percent)
    {
        var beside = new[] { RunLow.Limit.Value, RunLow.Warning.Value }.Any(l => Math.Abs(percent - l) < 0.5 && Math.Abs(percent - l) > 1e-6);
        return percent.ToString(beside ? "0.####" : "0", CultureInfo.InvariantCulture);
    }
}
