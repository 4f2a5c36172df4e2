using Trundle.Engine.Rotation;

namespace Trundle.Published.Tests;

/// <summary>
/// Rotation patterns. Sources: tyre safety consumer page (read: the free-rolling axle crosses to the drive axle, X for permanent four-wheel
/// drive, directional front to rear only); tyre maker's guidance (read: five tyres, the spare in right rear). Orders are calculated.
/// </summary>
public class RotationPatternTests
{
    [Theory]
    [InlineData("rearward cross", "1L>2R 1R>2L 2L>1L 2R>1R", 4)]
    [InlineData("forward cross", "1L>2L 1R>2R 2L>1R 2R>1L", 4)]
    [InlineData("X", "1L>2R 1R>2L 2L>1R 2R>1L", 2)]
    [InlineData("front-to-rear", "1L>2L 1R>2R 2L>1L 2R>1R", 2)]
    [InlineData("side-to-side", "1L>1R 1R>1L 2L>2R 2R>2L", 2)]
    [InlineData("5-tyre rearward", "1L>S 1R>2L 2L>1L 2R>1R S>2R", 5)]
    [InlineData("5-tyre forward", "1L>2L 1R>S 2L>1R 2R>1L S>2R", 5)]
    [InlineData("dual rear, fronts differ", "1L>1R 1R>1L 2Li>2Ro 2Lo>2Ri 2Ri>2Lo 2Ro>2Li", 2)]
    [InlineData("dual rear, all alike", "1L>2Lo 1R>2Ro 2Li>1R 2Lo>2Li 2Ri>1L 2Ro>2Ri", 6)]
    public void Moves_and_order(string name, string moves, int order)
    {
        var pattern = RotationPattern.Named(name)!;
        string.Join(' ', pattern.Moves.Select(m => $"{m.From}>{m.To}").Order(StringComparer.Ordinal)).ShouldBe(moves);
        pattern.Order.ShouldBe(order);
    }
}
