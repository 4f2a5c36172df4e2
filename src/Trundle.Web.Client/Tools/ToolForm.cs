using System.Text.Json.Nodes;
using Trundle.Measures;
using Trundle.Visits.Bay;
using Trundle.Visits.Operations;
using Trundle.Web.Client.Entries;

namespace Trundle.Web.Client.Tools;

/// <summary>
/// The form of one computation: fields named by their paths in the operation's file, and the answer that the operation gives to the file that they
/// make. The same file given to the command has the same answer.
/// </summary>
public abstract class ToolForm(Tool tool) : IFields
{
    // Long enough for a browser to paint what it is told before the reckoning holds its one thread.
    private static readonly TimeSpan Paint = TimeSpan.FromMilliseconds(40);

    private readonly Dictionary<string, (VisitFields Fields, Reading<Answer> Said)> _ofParts = new(StringComparer.Ordinal);

    private VisitFields? _answered;
    private VisitFields? _asked;
    private AssembledFile? _file;
    private Reading<Answer>? _answer;
    private IReadOnlyList<Drawing>? _drawings;

    /// <summary>Told whenever something to be shown has changed.</summary>
    public event Action? Changed;

    /// <summary>Which computation.</summary>
    public Tool Tool { get; } = tool;

    /// <inheritdoc />
    public abstract VisitFields Fields { get; }

    /// <inheritdoc />
    public abstract UnitHabits Units { get; }

    /// <summary>Where what is entered is kept, in words.</summary>
    public abstract string Kept { get; }

    /// <inheritdoc />
    public string? this[string field] => Fields[field];

    /// <summary>Which of the tool's parts the page is at: it alone is asked about, and what stands in the others is kept. Null where the tool has none.</summary>
    public string? Part { get; private set; }

    /// <summary>Goes to one of the tool's parts.</summary>
    public void GoTo(string part)
    {
        if (part != Part)
        {
            (Part, _answered) = (part, null);
        }
    }

    /// <summary>What the operation says to one part by itself; null where nothing of it is entered.</summary>
    public Reading<Answer>? AnswerOf(string part)
    {
        if (!Fields.Under(part).Any())
        {
            return null;
        }

        if (!_ofParts.TryGetValue(part, out var kept) || !ReferenceEquals(kept.Fields, Fields))
        {
            _ofParts[part] = kept = (Fields, Ask(FieldsOf(part).Assemble()));
        }

        return kept.Said;
    }

    /// <summary>The file that the fields make.</summary>
    public AssembledFile File
    {
        get
        {
            Reckon();
            return _file!;
        }
    }

    /// <summary>What the operation says to the file.</summary>
    public Reading<Answer> Reckoned
    {
        get
        {
            Reckon();
            return _answer!.Value;
        }
    }

    /// <summary>The answer, or null while something is missing or wrong.</summary>
    public Answer? Answer => Reckoned is { IsRead: true } read ? read.Value : null;

    /// <summary>The answer's keys, or null.</summary>
    public JsonObject? Body => Answer?.Body;

    /// <summary>The drawings that belong to the answer; none where there is none.</summary>
    public IReadOnlyList<Drawing> Drawings => Answer is null ? [] : _drawings ??= Tool.Draw(File.Root, this);

    /// <summary>What is missing or wrong first, or null where there is an answer.</summary>
    public Problem? Problem => Reckoned.Problem;

    /// <summary>A long reckoning waits to be asked for, and a slow one until the page has said so, so that no entry holds the page up.</summary>
    public bool Waits => !ReferenceEquals(_asked, Fields) && (Tool.IsLong(this) || Tool.IsSlow(this));

    /// <summary>A slow reckoning waits, which nobody needs to ask for.</summary>
    public bool IsDue => Waits && !IsReckoning && !Tool.IsLong(this);

    /// <summary>A reckoning that waited was asked for and is not done.</summary>
    public bool IsReckoning { get; private set; }

    /// <summary>Makes a reckoning that waits: that it goes on stands on the page before it begins.</summary>
    public async Task ReckonAsync()
    {
        IsReckoning = true;
        Tell();
        await Task.Delay(Paint);
        (_asked, _answered) = (Fields, null);
        Reckon();
        IsReckoning = false;
        Tell();
    }

    /// <summary>True while nothing at all is entered.</summary>
    public bool IsBlank => !FieldsOf(Part).Newest.Any(e => e.Typed.Length > 0);

    /// <summary>True where nothing is entered here that could be taken away.</summary>
    public virtual bool IsTold => Part is null ? IsBlank : !Fields.Under(Part).Any();

    /// <summary>The field that the first problem is about.</summary>
    public string? ProblemField => Problem is { } problem ? File.FieldOf(problem.Where) : null;

    /// <summary>What is still to be entered, in the page's words; null where nothing is, or where something stands there that is not right.</summary>
    public string? StillNeeded => Problem is { Code: "missing" or "too-few-places" or "too-few-runs" or "too-few-spins" or "too-few-mountings" or "too-few" or "points-differ" or "not-twelve" } && ProblemField is { } at ? Wanted.Of(Tool.Key, at) : null;

    /// <inheritdoc />
    public virtual string? ProblemOf(string field) => this[field] is not null && ProblemField == field ? Problem!.Message : null;

    /// <inheritdoc />
    public abstract Task EnterAsync(params (string Field, string Typed)[] texts);

    /// <summary>Takes everything away that stands under a path.</summary>
    public Task ClearAsync(string path) => EnterAsync([.. Fields.Under(path).Select(e => (e.Field, ""))]);

    /// <summary>Takes everything away; of a tool with parts, the part that the page is at.</summary>
    public virtual Task ClearAllAsync() => Part is { } part ? ClearAsync(part) : EnterAsync([.. Fields.Newest.Where(e => e.Typed.Length > 0).Select(e => (e.Field, ""))]);

    /// <summary>How many rows a list has: one more than the number of the last in which anything stands.</summary>
    public int Count(string list) => Fields.Under(list)
        .Where(e => e.Field.Length > list.Length)
        .Select(e => e.Field[(list.Length + 1)..].Split('.')[0])
        .Select(n => int.TryParse(n, System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out var i) ? i + 1 : 0)
        .DefaultIfEmpty(0).Max();

    /// <summary>Takes a row out of a list; those after it close up.</summary>
    public Task RemoveRowAsync(string list, int row)
    {
        var count = Count(list);
        var texts = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var entry in Enumerable.Range(row, Math.Max(0, count - row)).SelectMany(i => Fields.Under(Row(list, i))))
        {
            texts[entry.Field] = "";
        }

        for (var i = row + 1; i < count; i++)
        {
            foreach (var entry in Fields.Under(Row(list, i)).ToList())
            {
                texts[Row(list, i - 1) + entry.Field[Row(list, i).Length..]] = entry.Typed;
            }
        }

        return EnterAsync([.. texts.Select(t => (t.Key, t.Value))]);
    }

    /// <summary>The path of a row.</summary>
    public static string Row(string list, int row) => FormattableString.Invariant($"{list}.{row}");

    /// <summary>Tells the page.</summary>
    protected void Tell() => Changed?.Invoke();

    /// <summary>What is given to the operation; most give the file as it is made.</summary>
    protected virtual Reading<Answer> Ask(AssembledFile file)
    {
        ArgumentNullException.ThrowIfNull(file);
        return Tool.Operation.Run(file.Root);
    }

    /// <summary>The fields without those that only the tool's other parts read.</summary>
    private VisitFields FieldsOf(string? part) => part is null
        ? Fields
        : VisitFields.Of(Fields.Newest.Where(e => !Tool.Parts.Any(p => p.Path != part && p.Owns(e.Field))));

    private void Reckon()
    {
        var fields = Fields;
        if (!ReferenceEquals(_answered, fields))
        {
            _answered = fields;
            if (Waits && !Tool.IsLong(this) && _answer is { IsRead: true })
            {
                // The answer of before stays for the moment, so that nothing on the page jumps away under the hand.
                return;
            }

            _file = FieldsOf(Part).Assemble();
            _answer = Waits ? Reading<Answer>.Failed(new Problem("", "waits", Tool.IsLong(this) ? "So large a set is reckoned when you ask for it, below." : "Reckoning …")) : Ask(_file);
            _drawings = null;
        }
    }
}
