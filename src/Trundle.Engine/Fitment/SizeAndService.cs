using System.Globalization;
using Trundle.Engine.Findings;
using Trundle.Engine.InUse;
using Trundle.Engine.Reference;
using Trundle.Engine.Sidewall;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Fitment;

/// <summary>Size, load and speed of each tyre against the placard and against what the axle carries.</summary>
internal static class SizeAndService
{
    private static readonly Source PlacardEntered = Source.Entered("the vehicle's placard, as entered");

    public static void Check(CheckBook book, Assembly assembly)
    {
        var at = assembly.Position.ToString();
        if (assembly.Tyre?.Marking is not { } marking)
        {
            book.Need(at, "the tyre's marking", "size, load, speed and construction are read from it");
            return;
        }

        if (marking.Size.TyreClass == TyreClass.TemporarySpare && !assembly.Position.IsSpare)
        {
            var limit = Figures.Of("fitment.temporary-spare-speed");
            book.Judge("spare.in-use", at, true, Amount.Word(marking.Size.Text), limit.Limit(0));
            return;
        }

        if (book.Vehicle.PlacardAt(assembly.Position)?.Size is { } placard)
        {
            Size(book, assembly, at, marking, placard);
            Load(book, assembly, at, marking, placard);
            Speed(book, assembly, at, marking, placard);
        }
        else
        {
            book.Need(at, assembly.Position.IsSpare ? "the spare's placard" : $"the placard of {CheckBook.AxleName(assembly.Position.Axle)}: size, load index and speed symbol", "size, load index and speed symbol are held against it");
        }

        if (assembly.Position.Dual != DualPlace.Single && marking.Service is { LoadIndexSingle: { } single, LoadIndexDual: null } && !MouldedLoad.Of(assembly.Tyre, true).ForPair)
        {
            book.Judge("load.dual-unknown", at, true, Amount.Word(string.Create(CultureInfo.InvariantCulture, $"load index {single}, single only")), null);
        }

        if (!assembly.Position.IsSpare)
        {
            AxleLoad(book, assembly, at, marking);
            TopSpeed(book, assembly, at, marking);
            LoadAtTopSpeed(book, assembly, at, marking);
        }
    }

    /// <summary>What one tyre may carry at a place.</summary>
    /// <param name="AtMost">It carries no more than this.</param>
    /// <param name="ForThisPlace">False in a dual pair where only the load of a single tyre is known: it may carry less than <paramref name="AtMost"/> there.</param>
    internal readonly record struct RatedLoad(Mass AtMost, bool ForThisPlace);

    /// <summary>The load that one tyre may carry at its place: by load index and by a moulded MAX LOAD, the lower; divided by 1.10 for a car tyre on another vehicle, by the US rules.</summary>
    internal static RatedLoad? MayCarry(FittedVehicle subject, Assembly assembly)
    {
        if (assembly.Tyre?.Marking is not { } marking)
        {
            return null;
        }

        var dual = assembly.Position.Dual != DualPlace.Single;
        var byIndex = marking.Service.LoadAtMost(dual);
        var (moulded, forPair) = MouldedLoad.Of(assembly.Tyre, dual);
        if ((byIndex is { } a && moulded is { } b ? (a < b ? a : b) : byIndex ?? moulded) is not { } rated)
        {
            return null;
        }

        var counted = DividedByUnitedStatesRules(subject, marking) ? rated / Figures.Of("pressure.cartyre-factor").Value : rated;
        return new RatedLoad(counted, !dual || marking.Service.LoadDual is not null || forPair);
    }

    private static bool DividedByUnitedStatesRules(FittedVehicle subject, Marking marking) =>
        subject.Rules == RuleSet.UnitedStates && marking.Size.TyreClass == TyreClass.Passenger && subject.Vehicle.VehicleClass is not ("car" or "motorcycle");

    private static void Size(CheckBook book, Assembly assembly, string at, Marking marking, Marking placard)
    {
        var rule = assembly.Position.IsSpare ? "spare.size" : "size.placard";
        var measured = Amount.Word(marking.Size.Text);
        var limit = new Limit(Amount.Word(placard.Size.Text), PlacardEntered);
        var relation = SizeMatch.Relation(marking.Size, placard.Size);
        book.Judge(rule, at, relation == SizeRelation.Different, measured, limit);
        if (relation == SizeRelation.SameNumbersOtherStandard)
        {
            book.Judge("size.standard", at, true, measured, limit);
        }

        if (placard.Size.RunFlat != SidewallMarks.IsRunFlat(assembly.Tyre!) && !assembly.Position.IsSpare)
        {
            book.Judge("run-flat", at, true, measured, limit);
        }
    }

    private static void Load(CheckBook book, Assembly assembly, string at, Marking marking, Marking placard)
    {
        var dual = assembly.Position.Dual != DualPlace.Single;
        var fitted = dual ? marking.Service.LoadIndexDual : marking.Service.LoadIndexSingle;
        var asked = dual ? placard.Service.LoadIndexDual : placard.Service.LoadIndexSingle;
        var which = dual ? "load index in a dual pair" : "load index";
        if (fitted is { } f && asked is { } a)
        {
            book.Judge("load.index", at, f < a, Amount.Number(f, "", 0), new Limit(Amount.Number(a, "", 0), PlacardEntered));
        }
        else if (dual && BelowPlacard(marking.Service, placard.Service, dual) is var (has, needs))
        {
            book.Judge("load.index", at, true, Amount.Number(has, "", 0), new Limit(Amount.Number(needs, "", 0), PlacardEntered), null, fitted is null ? [NoMoreInPair] : []);
        }
        else if (marking.Service.LoadRange is { } range && placard.Service.LoadRange is { } askedRange)
        {
            book.Judge("load.range", at, string.CompareOrdinal(range, askedRange) < 0, Amount.Word($"load range {range}"), new Limit(Amount.Word($"load range {askedRange}"), PlacardEntered));
        }
        else
        {
            book.Need(at, fitted is null ? $"the tyre's {which}" : $"the placard's {which}", "the tyre's load is held against the placard");
        }

        if (placard.Service.ExtraLoad && !marking.Service.ExtraLoad && !marking.Service.HighLoad)
        {
            var rule = fitted >= asked ? "load.extra-load-word" : "load.extra-load";
            book.Judge(rule, at, true, Amount.Word("no XL on the tyre"), new Limit(Amount.Word("XL"), PlacardEntered));
        }
        else if (placard.Service.ExtraLoad)
        {
            book.Judge("load.extra-load", at, false, Amount.Word(marking.Service.HighLoad ? "HL" : "XL"), new Limit(Amount.Word("XL"), PlacardEntered));
        }

        if (placard.Service.HighLoad)
        {
            book.Judge("load.high-load", at, !marking.Service.HighLoad, Amount.Word(marking.Service.HighLoad ? "HL" : "no HL on the tyre"), new Limit(Amount.Word("HL"), PlacardEntered));
        }
    }

    /// <summary>
    /// The tyre's load index and the placard's where the tyre's is certainly too low at a place; else null. Where one of the two has no dual index,
    /// the tyre's single index is the most that it can have in a pair, and single indices are held against each other only where the placard has no other.
    /// </summary>
    internal static (int Fitted, int Asked)? BelowPlacard(ServiceDescription fitted, ServiceDescription placard, bool dual)
    {
        var (has, asked) = dual && placard.LoadIndexDual is { } pair
            ? (fitted.LoadIndexAtMost(dual), pair)
            : (fitted.LoadIndexSingle, placard.LoadIndexSingle);
        return has < asked ? (has.Value, asked.Value) : null;
    }

    private const string NoMoreInPair = "No dual load index was read on this tyre: in a dual pair it carries no more than singly, and that is too little already.";

    private static void AxleLoad(CheckBook book, Assembly assembly, string at, Marking marking)
    {
        if (WheelLoad.On(book.Subject, assembly.Position) is not { } carried)
        {
            book.Need(CheckBook.AxleName(assembly.Position.Axle), "the load on this axle", "what tyres and wheels carry is held against it");
            return;
        }

        var each = carried.Load;
        var rated = MayCarry(book.Subject, assembly);
        var limit = book.Limit("load.axle", assembly.Position);
        if (rated is not { } may || (!may.ForThisPlace && !limit.IsBrokenBy(each / may.AtMost * 100)))
        {
            book.Need(at, assembly.Position.Dual == DualPlace.Single ? "the tyre's load index or MAX LOAD" : "the tyre's load index or MAX LOAD in a dual pair", "the tyre's load is held against the load of its axle");
            return;
        }

        var load = may.AtMost;
        string[] cautions = DividedByUnitedStatesRules(book.Subject, marking)
            ? [string.Create(CultureInfo.InvariantCulture, $"A car tyre on this vehicle counts with its rating divided by {Figures.Of("pressure.cartyre-factor").Value:0.00}: {Figures.Of("pressure.cartyre-factor").Source.ForPeople}.")]
            : [];
        cautions = may.ForThisPlace ? cautions : [NoMoreInPair, .. cautions];
        var share = each / load * 100;
        book.Judge("load.axle", at, limit.IsBrokenBy(share), Amount.Of(load, "kg", 0),
            new Limit(Amount.Of(each, "kg", 0), carried.Source), null, cautions);
        book.ByWorkshop(JudgedQuantity.LoadShare, assembly.Position, at, share, new Amount(share, "%", string.Create(CultureInfo.InvariantCulture, $"{share:0.#} % of what the tyre may carry ({load.Text("kg", 0)})")));
    }

    private static void Speed(CheckBook book, Assembly assembly, string at, Marking marking, Marking placard)
    {
        if (placard.Service.Speed is not { } asked)
        {
            book.Need(assembly.Position.IsSpare ? at : CheckBook.AxleName(assembly.Position.Axle), "the placard's speed symbol", "the tyre's speed is held against it");
            return;
        }

        if (TyreSpeed(marking, asked) is not { } speed)
        {
            book.Need(at, "the tyre's speed symbol, or its maker's word on it", "the tyre's speed is held against the placard");
            return;
        }

        var limit = new Limit(new Amount(asked.KilometresPerHour, "km/h", $"{placard.Service.SpeedSymbol} ({asked.Text("km/h", 0)})"), PlacardEntered);
        var measured = new Amount(speed.KilometresPerHour, "km/h", $"{marking.Service.SpeedSymbol ?? "ZR"} ({speed.Text("km/h", 0)})");
        book.Judge(speed < asked && SidewallMarks.IsWinter(assembly.Tyre!) ? "speed.winter" : "speed.placard", at, speed < asked, measured, limit);
    }

    private static void TopSpeed(CheckBook book, Assembly assembly, string at, Marking marking)
    {
        if (book.Vehicle.TopSpeed is not { } top)
        {
            return;
        }

        var source = Source.Entered("the vehicle's top speed, as entered");
        if (TyreSpeed(marking, top) is { } speed)
        {
            var winter = speed < top && SidewallMarks.IsWinter(assembly.Tyre!);
            if (winter && book.Vehicle.PlacardAt(assembly.Position)?.Size?.Service.Speed is { } asked && speed < asked)
            {
                return;
            }

            book.Judge(winter ? "speed.winter" : "speed.vehicle", at, speed < top, Amount.Of(speed, "km/h", 0), new Limit(Amount.Of(top, "km/h", 0), source));
        }
        else
        {
            book.Need(at, "the tyre's speed symbol, or its maker's word on it", "the tyre's speed is held against the vehicle's top speed");
        }
    }

    /// <summary>Above 210 km/h a V, W or Y tyre carries a part of its load only.</summary>
    private static void LoadAtTopSpeed(CheckBook book, Assembly assembly, string at, Marking marking)
    {
        if (book.Vehicle.TopSpeed is { } top
            && WheelLoad.On(book.Subject, assembly.Position) is { } carried
            && MayCarry(book.Subject, assembly) is var (load, forThisPlace)
            && HighSpeedLoad.Share(ServiceDescriptionSpeed.Of(marking.Service), top) is SpeedLoad.Known { Share: < 1 } known)
        {
            var each = carried.Load;
            if (!forThisPlace && load * known.Share >= each)
            {
                return;
            }

            book.Judge("load.high-speed", at, load * known.Share < each, Amount.Of(load * known.Share, "kg", 0), new Limit(Amount.Of(each, "kg", 0), carried.Source), null,
                string.Create(CultureInfo.InvariantCulture, $"At {top.Text("km/h", 0)} this tyre carries {known.Share * 100:0.#} % of its load: {known.Source.ForPeople}."));
        }
    }

    /// <summary>The speed that the marking vouches for; null where it vouches for less than is asked and only the maker can say more.</summary>
    private static Speed? TyreSpeed(Marking marking, Speed asked)
    {
        var known = marking.Service.Speed ?? (marking.Size.AboveTwoHundredForty ? Measures.Speed.FromKilometresPerHour(240) : null);
        var open = marking.Service.AboveSymbol || (marking.Service.Speed is null && marking.Size.AboveTwoHundredForty);
        return known is { } speed && open && speed < asked ? null : known;
    }
}
