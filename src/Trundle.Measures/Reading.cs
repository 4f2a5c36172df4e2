namespace Trundle.Measures;

/// <summary>One thing wrong with what was typed: where it stands, a stable code, and a sentence that says what was read and what would be right.</summary>
/// <param name="Where">A field path such as <c>readings.inner.mass</c>, or file:line:column; empty where the text stands alone.</param>
/// <param name="Code">A stable word for programs, such as <c>unit-unknown</c>.</param>
/// <param name="Message">One sentence for a person.</param>
public sealed record Problem(string Where, string Code, string Message)
{
    /// <summary>The same problem, placed.</summary>
    public Problem At(string where) => this with { Where = where };
}

/// <summary>What a strict reader returns: the value, or the one problem that kept it from being read. It never throws for bad text.</summary>
/// <typeparam name="T">What was to be read.</typeparam>
public readonly record struct Reading<T>
{
    private readonly T? _value;
    private readonly Problem? _problem;

    private Reading(T? value, Problem? problem) => (_value, _problem) = (value, problem);

    /// <summary>A value that was read.</summary>
    public static Reading<T> Of(T value) => new(value, null);

    /// <summary>A problem in its place.</summary>
    public static Reading<T> Failed(Problem problem) => new(default, problem);

    /// <summary>A problem without a place yet.</summary>
    public static Reading<T> Failed(string code, string message) => new(default, new Problem("", code, message));

    /// <summary>True where a value was read. <c>default(Reading)</c> holds the default value and no problem.</summary>
    public bool IsRead => _problem is null;

    /// <summary>The value; throws where none was read, since that is the caller's mistake.</summary>
    public T Value => _problem is null ? _value! : throw new InvalidOperationException(_problem.Message);

    /// <summary>The problem, or null where the value was read.</summary>
    public Problem? Problem => _problem;

    /// <summary>Goes on with one of the two cases.</summary>
    public TResult Match<TResult>(Func<T, TResult> read, Func<Problem, TResult> failed) =>
        _problem is null ? read(_value!) : failed(_problem);

    /// <summary>The value carried through a function; a problem stays as it is.</summary>
    public Reading<TNext> Then<TNext>(Func<T, Reading<TNext>> next) =>
        _problem is null ? next(_value!) : Reading<TNext>.Failed(_problem);
}
