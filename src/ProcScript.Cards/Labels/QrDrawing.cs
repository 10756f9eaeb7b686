using System.Globalization;
using System.Text;
using QRCoder;

namespace ProcScript.Cards.Labels;

/// <summary>Draws a QR code as SVG.</summary>
internal static class QrDrawing
{
    /// <summary>The code of a text, with the four white modules around it that scanners need (ISO/IEC 18004, from memory). Level M restores about 15 % of it.</summary>
    /// <param name="text">The text.</param>
    /// <param name="title">What a screen reader says of it.</param>
    public static string Svg(string text, string title)
    {
        using var code = QRCodeGenerator.GenerateQrCode(text, QRCodeGenerator.ECCLevel.M);
        // The white modules are part of the matrix.
        var modules = code.ModuleMatrix;
        var path = new StringBuilder();
        for (var row = 0; row < modules.Count; row++)
        {
            for (var column = 0; column < modules.Count; column++)
            {
                if (modules[row][column])
                {
                    path.Append(CultureInfo.InvariantCulture, $"M{column} {row}h1v1h-1z");
                }
            }
        }

        var size = modules.Count.ToString(CultureInfo.InvariantCulture);
        return $"<svg class=\"qr\" viewBox=\"0 0 {size} {size}\" shape-rendering=\"crispEdges\" role=\"img\" aria-label=\"{System.Text.Encodings.Web.HtmlEncoder.Default.Encode(title)}\"><rect width=\"{size}\" height=\"{size}\" fill=\"#fff\"/><path d=\"{path}\" fill=\"#000\"/></svg>";
    }
}
