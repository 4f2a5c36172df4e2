namespace Trundle.Visits.Operations;

/// <summary>A drawing that belongs to an operation's answer.</summary>
/// <param name="Name">What it is of, such as <c>radial</c>.</param>
/// <param name="Svg">The drawing.</param>
public sealed record Drawing(string Name, string Svg);
