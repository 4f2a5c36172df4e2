using Trundle.Engine.Findings;
using Trundle.Engine.Reference;
using Trundle.Engine.Sidewall;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Fitment;

/// <summary>A whole vehicle's tyres and wheels against its placard, its hubs, and each other.</summary>
public static class FitmentCheck
{
    /// <summary>
    /// Judges what is fitted: size, load, speed, construction within and across axles, direction and outer face, rim diameter and width,
    /// circumference spread on driven axles, duals, spare, wheel to hub, condemned tyres and wheels, words that keep a tyre off the road.
    /// </summary>
    /// <param name="subject">The vehicle with what is fitted; without rules only the trade's are applied.</param>
    /// <returns>Every result, passes with category none, and what is needed where data was left out.</returns>
    /// <source>the rules of <c>in-use-rules.csv</c> and <c>construction-mix.csv</c>, each with its own source; the placard, the marking and the hub as entered</source>
    public static CheckResult Run(FittedVehicle subject)
    {
        ArgumentNullException.ThrowIfNull(subject);
        var book = new CheckBook(subject);
        foreach (var assembly in InOrder(subject))
        {
            RoadUse.Check(book, assembly);
            RemadeTyre.Check(book, assembly);
            SizeAndService.Check(book, assembly);
            Facing.Check(book, assembly);
            TyreToRim.Check(book, assembly);
            WheelToHub.Check(book, assembly);
            FixingsOnWheel.Check(book, assembly);
        }

        WheelToHub.Counts(book);
        FixingsOnWheel.Axles(book);
        AxleMatch.Check(book);
        ConstructionMix.Check(book);
        RollingMatch.Duals(book);
        RollingMatch.Driven(book);
        Spare(book);
        return book.Result();
    }

    /// <summary>From the front, left before right, inner before outer, the spare last.</summary>
    internal static IEnumerable<Assembly> InOrder(FittedVehicle subject) =>
        subject.Fitted.OrderBy(a => a.Position.IsSpare ? Position.MostAxles + 1 : a.Position.Axle).ThenBy(a => a.Position.Side).ThenBy(a => a.Position.Dual);

    /// <summary>What a spare must be beyond its own placard: it carries the most heavily loaded wheel, and a temporary one says its limits.</summary>
    private static void Spare(CheckBook book)
    {
        if (book.Subject.At(Position.Spare)?.Tyre?.Marking is not { } marking)
        {
            if (book.Vehicle.SparePlacard is not null)
            {
                book.Need("S", "the spare, or the word that there is none", "the vehicle has a placard for a spare");
            }

            return;
        }

        var rounding = Figures.Of("fitment.bolt-circle-rounding").As<Length>().Millimetres;
        var hubs = book.Vehicle.Axles.Select(a => a.Hub?.BoltCircle).OfType<BoltCircle>().ToList();
        if (book.Subject.At(Position.Spare)!.Wheel?.BoltCircle is { } own && hubs.Count > 0)
        {
            var other = hubs.Find(h => h.Count != own.Count || Math.Abs((h.Diameter - own.Diameter).Millimetres) > rounding);
            book.Judge("spare.wheel", "S", other is not null, WheelToHub.Written(own), new Limit(WheelToHub.Written(other ?? hubs[0]), Source.Entered("the hubs, as entered")));
        }

        if (marking.Size.TyreClass == TyreClass.TemporarySpare)
        {
            book.Judge("spare.temporary", "S", false, Amount.Word(marking.Size.Text), Figures.Of("fitment.temporary-spare-speed").Limit(0), book.Rule("spare.temporary").Action);
        }

        var wheelLoads = WheelLoad.Everywhere(book.Subject);
        if (wheelLoads.Count > 0 && SizeAndService.MayCarry(book.Subject, book.Subject.At(Position.Spare)!) is { AtMost: var carries })
        {
            var most = wheelLoads.Max();
            book.Judge("spare.load", "S", carries < most, Amount.Of(carries, "kg", 0), new Limit(Amount.Of(most, "kg", 0), Source.Entered("the greatest wheel load, from the loads as entered")));
        }
    }
}
