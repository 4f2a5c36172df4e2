namespace Trundle.Visits.Operations;

/// <summary>A drawing that belongs to an operation's answer. It is made when it is first looked at: a set of many pairs has many.</summary>
/// <param name="name">What it is of, such as <c>radial</c>.</param>
/// <param name="draw">Makes the drawing.</param>
public sealed class Drawing(string name, Func<string> draw)
{
    private string? _svg;

    /// <summary>A drawing that is made already.</summary>
    public Drawing(string name, string svg) : this(name, () => svg)
    {
    }

    /// <summary>What it is of.</summary>
    public string Name { get; } = name;

    /// <summary>The drawing.</summary>
    public string Svg => _svg ??= draw();
}
