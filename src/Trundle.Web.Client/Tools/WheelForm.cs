using Trundle.Engine.Vehicles;
using Trundle.Visits.Bay;
using Trundle.Web.Client.Entries;

namespace Trundle.Web.Client.Tools;

/// <summary>
/// A form at a wheel of a visit: its fields are entries of the visit. Until the first of them is entered it shows what the visit tells already; with
/// the first entry that is kept too, so that the part is whole in the visit's file.
/// </summary>
public sealed class WheelForm(Tool tool, OpenVisit visit, Position position) : ToolForm(tool)
{
    private VisitFields? _seen;
    private VisitFields _fields = VisitFields.Empty;

    /// <summary>The visit.</summary>
    public OpenVisit Visit { get; } = visit;

    /// <summary>The wheel, by where it came in.</summary>
    public Position Position { get; } = position;

    /// <summary>The path of the part.</summary>
    public string At => $"fitted.{Position}.{Tool.Key}";

    /// <summary>True where nothing of the part itself is entered: what stands here is what the visit tells.</summary>
    public override bool IsTold => !Visit.Fields.Under(At).Any();

    /// <inheritdoc />
    public override UnitHabits Units => Visit.Units;

    /// <inheritdoc />
    public override string Kept => "in this visit";

    /// <inheritdoc />
    public override VisitFields Fields
    {
        get
        {
            if (!ReferenceEquals(_seen, Visit.Fields))
            {
                _seen = Visit.Fields;
                var own = Visit.Fields.Under(At).Select(e => e with { Field = e.Field[(At.Length + 1)..] }).ToList();
                _fields = own.Count > 0
                    ? VisitFields.Of(own)
                    : VisitFields.Of(WheelTold.Of(Visit, Position, Tool.Key).Select(t => new Entry(Guid.Empty, t.Field, t.Typed, "", Role.Technician, DateTimeOffset.UnixEpoch)));
            }

            return _fields;
        }
    }

    /// <inheritdoc />
    public override string? ProblemOf(string field) => Visit.RefusalOf($"{At}.{field}") ?? base.ProblemOf(field);

    /// <inheritdoc />
    public override async Task EnterAsync(params (string Field, string Typed)[] texts)
    {
        ArgumentNullException.ThrowIfNull(texts);
        var first = IsTold ? Fields.Newest.Where(e => texts.All(t => t.Field != e.Field)).Select(e => (e.Field, e.Typed)) : [];
        await Visit.EnterAsync([.. first.Concat(texts).Select(t => ($"{At}.{t.Field}", t.Typed))]);
        Tell();
    }

    /// <summary>Forgets what was entered here: then it shows what the visit tells now.</summary>
    public override async Task ClearAllAsync()
    {
        await Visit.EnterAsync([.. Visit.Fields.Under(At).Select(e => (e.Field, ""))]);
        Tell();
    }
}
