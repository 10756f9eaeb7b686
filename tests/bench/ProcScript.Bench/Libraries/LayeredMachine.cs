using System.Globalization;
using System.Text;

namespace ProcScript.Bench.Libraries;

/// <summary>A machine of many layers, of which each part lets either of two below it give way, or asks for one. The same size gives the same bytes.</summary>
internal static class LayeredMachine
{
    /// <summary>The part that lies deepest.</summary>
    public static string Deepest(int layers) => string.Create(CultureInfo.InvariantCulture, $"p{layers - 1}_0");

    /// <summary>The text of the library.</summary>
    /// <param name="layers">How many layers.</param>
    /// <param name="width">How many parts in each.</param>
    /// <param name="joints">How many joints at each part.</param>
    /// <param name="hasChoices">Whether either of two parts will do.</param>
    public static string Of(int layers, int width, int joints, bool hasChoices)
    {
        var random = new Random(1);
        var text = new StringBuilder("tool key \"key\"\nfastener bolt \"bolt\" { drive key  time 10 s }\nmachine rig \"Rig\" {\n");
        for (var layer = 0; layer < layers; layer++)
        {
            for (var place = 0; place < width; place++)
            {
                var either = Enumerable.Range(0, width).OrderBy(_ => random.Next()).Take(hasChoices ? 2 : 1).Select(other => string.Create(CultureInfo.InvariantCulture, $"p{layer - 1}_{other} out"));
                text.Append(CultureInfo.InvariantCulture, $"part p{layer}_{place} \"part {layer} {place}\" {{{(layer == 0 ? "" : $" needs {string.Join(" or ", either)}")}\n");
                for (var joint = 0; joint < joints; joint++)
                {
                    text.Append(CultureInfo.InvariantCulture, $"held by {random.Next(1, 5)} bolt as b{layer}_{place}_{joint} {{ at \"place {joint}\" }}\n");
                }

                text.Append("}\n");
            }
        }

        return text.Append("}\n").ToString();
    }
}
