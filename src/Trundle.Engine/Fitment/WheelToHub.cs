using System.Globalization;
using Trundle.Engine.Findings;
using Trundle.Engine.Reference;
using Trundle.Engine.Sidewall;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Fitment;

/// <summary>The wheel against its hub: bolt circle, bore, seat, load rating.</summary>
internal static class WheelToHub
{
    private static readonly Source HubEntered = Source.Entered("the hub, as entered");

    public static void Check(CheckBook book, Assembly assembly)
    {
        if (assembly.Position.IsSpare || book.Vehicle.AxleAt(assembly.Position) is not { } axle)
        {
            return;
        }

        var at = assembly.Position.ToString();
        if (assembly.Wheel is not { } wheel)
        {
            book.Need(at, "the wheel: rim, bolt circle, bore, seat, load rating", "the wheel is held against tyre and hub");
            return;
        }

        Circle(book, assembly.Position, at, wheel, axle);
        Bore(book, assembly.Position, at, wheel, axle);
        Seat(book, assembly.Position, at, wheel, axle);
        Load(book, assembly.Position, at, wheel, axle);
    }

    /// <summary>
    /// The number of fixings of each axle against its hub's bolt circle: so many are tightened and recorded at each wheel. Where the hub's circle
    /// is not known, each wheel's is held against the number of fixings.
    /// </summary>
    public static void Counts(CheckBook book)
    {
        foreach (var (axle, i) in book.Vehicle.Axles.Select((a, i) => (a, i)))
        {
            if (axle.Fixings?.Count is { } count && axle.Hub?.BoltCircle is { } hub)
            {
                book.Judge("fixings.count", CheckBook.AxleName(i + 1), count != hub.Count, Amount.Number(count, "fixings", 0), new Limit(Written(hub), HubEntered));
            }
        }
    }

    private static void Circle(CheckBook book, Position position, string at, Wheel wheel, Axle axle)
    {
        if (wheel.BoltCircle is not { } own)
        {
            book.Need(at, "the wheel's bolt circle", "it is held against the hub's");
        }
        else if (axle.Hub?.BoltCircle is { } hub)
        {
            var apart = Math.Abs((own.Diameter - hub.Diameter).Millimetres);
            var rounding = Figures.Of("fitment.bolt-circle-rounding").As<Length>().Millimetres;
            book.Judge("hub.bolt-circle", at, own.Count != hub.Count || apart > rounding, Written(own), new Limit(Written(hub), HubEntered));
        }
        else if (axle.Fixings?.Count is { } count && own.Count != count)
        {
            book.Judge("hub.bolt-circle", at, true, Written(own), new Limit(Amount.Number(count, "fixings", 0), Source.Entered("the axle's fixings, as entered")));
        }
        else
        {
            book.Need(CheckBook.AxleName(position.Axle), "the hub's bolt circle", "the wheels' bolt circle is held against it");
        }
    }

    internal static Amount Written(BoltCircle circle) =>
        new(circle.Diameter.Millimetres, "mm", string.Create(CultureInfo.InvariantCulture, $"{circle.Count} x {circle.Diameter.Millimetres:0.##} mm"));

    private static void Bore(CheckBook book, Position position, string at, Wheel wheel, Axle axle)
    {
        if (wheel.Bore is not { } bore)
        {
            book.Need(at, "the wheel's bore", "it is held against the hub");
            return;
        }

        if (axle.Hub?.Bore is not { } hub)
        {
            book.Need(CheckBook.AxleName(position.Axle), "the hub's diameter at the bore", "the wheels' bore is held against it");
            return;
        }

        if (wheel.HubRing is { } ring)
        {
            Ring(book, position, at, bore, hub, ring);
            return;
        }

        var play = (bore - hub).Millimetres;
        var small = play < -Figures.Of("fitment.bore-rounding").As<Length>().Millimetres - CheckBook.Hair;
        book.Judge(small ? "hub.bore-small" : "hub.bore", at, small || play > Figures.Of("fitment.bore-play").As<Length>().Millimetres + CheckBook.Hair,
            Amount.Of(bore, "mm", 1), new Limit(Amount.Of(hub, "mm", 1), HubEntered));
    }

    /// <summary>With a ring in the bore two fits are held: the ring on the hub and the ring in the wheel.</summary>
    private static void Ring(CheckBook book, Position position, string at, Length bore, Length hub, HubRing ring)
    {
        var rounding = Figures.Of("fitment.bore-rounding").As<Length>().Millimetres + CheckBook.Hair;
        var most = Figures.Of("fitment.bore-play").As<Length>().Millimetres + CheckBook.Hair;
        string[] cautions = ring.Material switch
        {
            HubRingMaterial.Plastic => ["A plastic ring softens beside a hot brake and cracks: look at it whenever the wheel is off, and renew it where it is not whole."],
            HubRingMaterial.Metal => ["A metal ring left on the hub keeps the next wheel from lying flat: look for it before another wheel goes on."],
            null => [],
        };
        Fit("hub.ring-on-hub", ring.Inner, hub, "the ring's own bore", HubEntered, (inner, on) => inner - on);
        Fit("hub.ring-in-wheel", ring.Outer, bore, "the ring's outer diameter", Source.Entered("the wheel's bore, as entered"), (outer, into) => into - outer);

        void Fit(string rule, Length? measured, Length against, string what, Source source, Func<Length, Length, Length> room)
        {
            if (measured is not { } own)
            {
                book.Need(at, what, "the ring must fit hub and wheel");
                return;
            }

            var play = room(own, against).Millimetres;
            book.Judge(rule, at, play < -rounding || play > most, Amount.Of(own, "mm", 1), new Limit(Amount.Of(against, "mm", 1), source), null, cautions);
        }
    }

    private static void Seat(CheckBook book, Position position, string at, Wheel wheel, Axle axle)
    {
        if (wheel.Seat is { } own && axle.Fixings?.Seat is { } fixing)
        {
            book.Judge("hub.seat", at, own != fixing, Amount.Word($"{Word(own)} in the wheel"),
                new Limit(Amount.Word($"{Word(fixing)} on the {(axle.Fixings.Kind == FixingKind.Bolt ? "bolt" : "nut")}"), Source.Entered("the axle's fixings, as entered")));
        }
        else if (wheel.Seat is null)
        {
            book.Need(at, "the seat of the wheel's holes: cone, ball or flat", "it must have the shape of the fixings' seat");
        }
        else
        {
            book.Need(CheckBook.AxleName(position.Axle), "the seat of the fixings: cone, ball or flat", "it must have the shape of the wheel's seat");
        }
    }

    internal static string Word(SeatShape seat) => seat switch
    {
        SeatShape.Cone => "cone",
        SeatShape.Ball => "ball",
        SeatShape.Flat => "flat",
    };

    private static void Load(CheckBook book, Position position, string at, Wheel wheel, Axle axle)
    {
        if (wheel.LoadRating is not { } rating)
        {
            book.Need(at, "the wheel's load rating", "it is held against the load on the wheel");
            return;
        }

        var service = axle.Placard?.Size?.Service;
        if (WheelLoad.On(book.Subject, position) is { } carried)
        {
            book.Judge("wheel.load", at, rating < carried.Load, Amount.Of(rating, "kg", 0), new Limit(Amount.Of(carried.Load, "kg", 0), carried.Source));
        }
        else if ((position.Dual == DualPlace.Single ? service?.LoadSingle : service?.LoadDual) is { } placard)
        {
            book.Judge("wheel.load-placard", at, rating < placard, Amount.Of(rating, "kg", 0), new Limit(Amount.Of(placard, "kg", 0), Source.Entered("the load of the placard's tyre")));
        }
    }
}
