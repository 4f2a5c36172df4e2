using Trundle.Measures;
using Trundle.Visits.Files;

namespace Trundle.Visits.Paper;

/// <summary>A damage that the vehicle brought with it.</summary>
/// <param name="Place">Where on the vehicle, in words: front left wing.</param>
/// <param name="Words">What it is, in words.</param>
/// <param name="Photos">Photographs of it, by the identifier under which the workshop keeps them.</param>
public sealed record BodyDamage(string Place, string? Words, IReadOnlyList<Guid> Photos);

/// <summary>A warning lamp that was looked at with the ignition on, before any work.</summary>
/// <param name="Lamp">Which.</param>
/// <param name="Lit">It was lit.</param>
public sealed record LampSeen(WarningLamp Lamp, bool Lit);

/// <summary>A warning lamp that work at the wheels may be blamed for.</summary>
/// <param name="Key">Its key in the file.</param>
/// <param name="Name">As a person reads it.</param>
public sealed record WarningLamp(string Key, string Name)
{
    /// <summary>Every lamp that is asked for, in order.</summary>
    public static IReadOnlyList<WarningLamp> All { get; } =
    [
        new("tyre-pressure", "tyre pressure"),
        new("anti-lock-brakes", "anti-lock brakes"),
        new("stability", "stability control"),
        new("brake", "brakes"),
        new("steering", "steering"),
        new("suspension", "suspension or level control"),
        new("engine", "engine"),
        new("airbag", "airbag"),
    ];
}

/// <summary>The vehicle itself as it came: so that nobody is blamed after for what it brought.</summary>
/// <param name="Damage">Damage on arrival.</param>
/// <param name="Lamps">The lamps that were looked at.</param>
/// <param name="OtherLamps">Other lamps that were lit, in words, or null.</param>
public sealed record ArrivalRecord(IReadOnlyList<BodyDamage> Damage, IReadOnlyList<LampSeen> Lamps, string? OtherLamps)
{
    /// <summary>Nobody entered anything.</summary>
    public static ArrivalRecord Nothing { get; } = new([], [], null);

    /// <summary>The names of the lamps that were lit, the others too.</summary>
    public IReadOnlyList<string> Lit => [.. Lamps.Where(l => l.Lit).Select(l => l.Lamp.Name), .. OtherLamps is { } other ? [other] : Array.Empty<string>()];

    /// <summary>The names of the lamps that were looked at and were not lit.</summary>
    public IReadOnlyList<string> Dark => [.. Lamps.Where(l => !l.Lit).Select(l => l.Lamp.Name)];

    /// <summary>The photographs of every damage, in order.</summary>
    public IEnumerable<Guid> Photos => Damage.SelectMany(d => d.Photos);
}

/// <summary>Reads the <c>arrival</c> part of a visit's file.</summary>
public static class ArrivalReader
{
    /// <summary>Reads the part.</summary>
    public static ArrivalRecord Read(FileObject o)
    {
        ArgumentNullException.ThrowIfNull(o);
        var damage = o.Objects("damage").Select(ReadDamage).OfType<BodyDamage>().ToList();
        var lamps = new List<LampSeen>();
        if (o.Object("lamps") is { } looked)
        {
            foreach (var lamp in WarningLamp.All)
            {
                if (looked.Flag(lamp.Key) is { } lit)
                {
                    lamps.Add(new LampSeen(lamp, lit));
                }
            }

            looked.Done();
        }

        var record = new ArrivalRecord(damage, lamps, o.Text("otherLamps"));
        o.Done();
        return record;
    }

    private static BodyDamage? ReadDamage(FileObject o)
    {
        var place = o.Require("place", "say where on the vehicle, for example front left wing") ? o.Text("place") : null;
        var words = o.Text("words");
        var photos = new List<Guid>();
        foreach (var item in o.Items("photos"))
        {
            if (Guid.TryParseExact(item.Text, "D", out var id))
            {
                photos.Add(id);
            }
            else
            {
                o.Problems.Add(new Problem(item.Path, "photo-unreadable", $"'{NumberText.Shown(item.Text)}' names no photograph; the bay makes the name when one is taken."));
            }
        }

        o.Done();
        return place is null ? null : new BodyDamage(place, words, photos);
    }
}
