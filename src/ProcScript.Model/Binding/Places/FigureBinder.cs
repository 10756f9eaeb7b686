using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Figures;
using ProcScript.Model.Rules.Figures;
using ProcScript.Model.Sources;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Model.Binding.Places;

/// <summary>Binds pictures. Whether their files are there is looked at when the library is checked.</summary>
internal static class FigureBinder
{
    /// <summary>The picture meant; null where it lies outside of the library, which is a finding.</summary>
    public static Figure? Bind(FigurePropertySyntax figure, BindingPlace place, FindingSink sink)
    {
        var written = AuthorText.Filled(figure.File, place, sink);
        var caption = figure.Caption is { } text ? AuthorText.Bind(text, place, sink) : "";
        if (string.IsNullOrWhiteSpace(caption))
        {
            sink.Report(FigureWithoutCaption.At(written, place.At(figure.Caption?.Span ?? figure.File.Span)), place);
        }

        if (LibraryPath.Resolve(place.File.Path, written) is { Length: > 0 } path)
        {
            return new Figure(path, caption, place.At(figure.File.Span), figure.Phase);
        }

        sink.Report(FigureOutsideLibrary.At(written, place.At(figure.File.Span)), place);
        return null;
    }
}
