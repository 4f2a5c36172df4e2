using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Visits.Files;

/// <summary>What a file says for looking ahead; each is null or empty where it says nothing.</summary>
/// <param name="Ahead">How far to look, or null where nobody asked.</param>
/// <param name="WearPerThousandKilometres">Tread lost per 1 000 km by position.</param>
/// <param name="Interval">Distance between rotations.</param>
/// <param name="ReplaceAt">Depth at which a tyre is replaced.</param>
public sealed record RotationRequest(Length? Ahead, IReadOnlyDictionary<Position, Length> WearPerThousandKilometres, Length? Interval, Length? ReplaceAt);

/// <summary>Reads the <c>rotation</c> part of a visit's file, and <c>ahead</c>.</summary>
public static class RotationFileReader
{
    /// <summary>Reads them from the root.</summary>
    /// <param name="root">The root object of a visit's file.</param>
    /// <param name="problems">Gathers every problem.</param>
    public static RotationRequest Read(FileNode root, List<Problem> problems)
    {
        ArgumentNullException.ThrowIfNull(root);
        var file = new FileObject(root, problems);
        var ahead = file.Quantity<Length>("ahead", "km", Length.FromKilometres(1), Length.FromKilometres(2_000_000));
        var wear = new Dictionary<Position, Length>();
        if (file.Object("rotation") is not { } rotation)
        {
            return new RotationRequest(ahead, wear, null, null);
        }

        if (rotation.Object("wear") is { } rates)
        {
            foreach (var (key, _) in rotation.Node("wear")!.Members)
            {
                var position = Position.Read(key);
                if (!position.IsRead)
                {
                    rates.Node(key);
                    rates.Wrong(key, position.Problem!.Code, position.Problem.Message);
                }
                else if (rates.Quantity<Length>(key, "mm", Length.FromMillimetres(0), Length.FromMillimetres(10)) is { } rate)
                {
                    if (!wear.TryAdd(position.Value, rate))
                    {
                        rates.Wrong(key, "position-twice", $"{position.Value} stands twice.");
                    }
                }
            }

            rates.Done();
        }

        var request = new RotationRequest(
            ahead,
            wear,
            rotation.Quantity<Length>("interval", "km", Length.FromKilometres(100), Length.FromKilometres(200_000)),
            rotation.Quantity<Length>("replaceAt", "mm", Length.FromMillimetres(0), Length.FromMillimetres(20)));
        rotation.Done();
        return request;
    }
}
