using System.Globalization;
using Trundle.Engine.Findings;
using Trundle.Engine.Fixings;
using Trundle.Engine.Vehicles;

namespace Trundle.Engine.Fitment;

/// <summary>The fixings of a wheel: alike among themselves, of the axle's kind, on the wheel's seats, and engaged far enough.</summary>
internal static class FixingsOnWheel
{
    public static void Check(CheckBook book, Assembly assembly)
    {
        if (assembly.Position.IsSpare)
        {
            return;
        }

        var at = assembly.Position.ToString();
        var axle = book.Vehicle.AxleAt(assembly.Position)?.Fixings?.At(assembly.Position);
        if (assembly.Wheel?.SeatWorn is { } worn)
        {
            book.Judge("wheel.seat-worn", at, worn, Amount.Word(worn ? "worn" : "sound"), null);
        }

        if (assembly.Fixings.Count == 0)
        {
            return;
        }

        Alike(book, at, assembly.Fixings);
        Belonging(book, at, assembly, axle);
        if (axle?.Count is { } count && assembly.Fixings.All(f => f.Count is not null))
        {
            var found = assembly.Fixings.Sum(f => f.Count!.Value);
            book.Judge("fixings.missing", at, found < count, Amount.Number(found, "fixings", 0), new Limit(Amount.Number(count, "fixings", 0), Source.Entered("the axle's fixings, as entered")));
        }
    }

    /// <summary>What an axle's fixings need beside: how its threads are to be, and how far they are engaged.</summary>
    public static void Axles(CheckBook book)
    {
        foreach (var (fixings, i) in book.Vehicle.Axles.Select((a, i) => (a.Fixings, i)))
        {
            if (fixings is null)
            {
                continue;
            }

            var at = CheckBook.AxleName(i + 1);
            if (fixings.Kind is null)
            {
                book.Need(at, "whether the wheels are held by nuts or by bolts", "the two are never mixed");
            }

            if (fixings.Condition is null)
            {
                book.Need(at, "whether the threads are dry or oiled, as the vehicle's maker says", "the same torque clamps far harder oiled; makers differ, so it is never assumed");
            }

            foreach (var limit in LeastEngagement.Of(fixings))
            {
                book.Judge(limit.Rule, at, limit.Breached, LeastEngagement.Written(fixings), limit.Least);
            }
        }
    }

    private static void Alike(CheckBook book, string at, IReadOnlyList<FoundFixings> found)
    {
        var first = found[0];
        var mixed = found.FirstOrDefault(f => Differs(f.Kind, first.Kind) || Differs(f.Seat, first.Seat) || Differs(f.LeftHand, first.LeftHand) || Differs(f.Thread?.Text, first.Thread?.Text));
        book.Judge("fixings.mixed", at, mixed is not null, Amount.Word(mixed is null ? Words(first) : $"{Words(first)}; {Words(mixed)}"), null);
    }

    private static void Belonging(CheckBook book, string at, Assembly assembly, FixingSet? axle)
    {
        var wrong = assembly.Fixings.FirstOrDefault(f => Differs(f.Kind, axle?.Kind) || Differs(f.Thread?.Text, axle?.Thread?.Text) || Differs(f.Seat, assembly.Wheel?.Seat ?? axle?.Seat)
            || (axle is not null && f.LeftHand is { } left && left != axle.LeftHand));
        var wanted = new FoundFixings(null, axle?.Kind, assembly.Wheel?.Seat ?? axle?.Seat, axle?.Thread, axle?.LeftHand);
        book.Judge("fixings.foreign", at, wrong is not null, Amount.Word(Words(wrong ?? assembly.Fixings[0])), new Limit(Amount.Word(Words(wanted)), Source.Entered("the axle's fixings and the wheel's seat, as entered")));
    }

    private static bool Differs<T>(T? a, T? b) where T : struct => a is { } x && b is { } y && !x.Equals(y);

    private static bool Differs(string? a, string? b) => a is not null && b is not null && a != b;

    private static string Words(FoundFixings fixings) => string.Join(", ", new[]
    {
        (fixings.Count is { } count ? count.ToString(CultureInfo.InvariantCulture) + " " : "") + (fixings.Kind switch { FixingKind.Nut => "nut", FixingKind.Bolt => "bolt", null => "fixing" }) + (fixings.Count == 1 ? "" : "s"),
        fixings.Thread?.Text,
        fixings.Seat is { } seat ? $"{WheelToHub.Word(seat)} seat" : null,
        fixings.LeftHand == true ? "left-hand" : null,
    }.OfType<string>());
}
