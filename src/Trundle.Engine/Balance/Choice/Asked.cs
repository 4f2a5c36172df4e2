namespace Trundle.Engine.Balance.Choice;

/// <summary>
/// What is asked of one plane: how near its vector must come to the need, and how much it may weigh. Where mass has a price, the heavier the
/// pieces the nearer they must come to be of use.
/// </summary>
/// <param name="Within">Greatest distance in g·mm, whatever the mass.</param>
/// <param name="WithinAtNothing">Greatest distance of something that weighs nothing, by the best choice so far.</param>
/// <param name="LessPerGram">By how much that distance falls with each gram.</param>
/// <param name="MostGrams">Nothing heavier is of use.</param>
internal readonly record struct Asked(double Within, double WithinAtNothing, double LessPerGram, double MostGrams)
{
    /// <summary>The greatest distance for a mass; below nothing where that mass is of no use.</summary>
    public double For(double grams) => grams > MostGrams ? -1 : Math.Min(Within, WithinAtNothing - (LessPerGram * grams));

    /// <summary>True where a list made for this holds all that the other asks for.</summary>
    public bool Covers(Asked other) =>
        Within >= other.Within && MostGrams >= other.MostGrams && WithinAtNothing >= other.WithinAtNothing
        && (LessPerGram == 0 || WithinAtNothing - (LessPerGram * other.MostGrams) >= other.WithinAtNothing - (other.LessPerGram * other.MostGrams));
}
