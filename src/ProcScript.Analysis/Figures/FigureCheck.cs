using ProcScript.Analysis.Checking;
using ProcScript.Analysis.Rules.Figures;
using ProcScript.Model;
using ProcScript.Model.Figures;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Figures;

/// <summary>Looks into the file of every picture that is wanted on a card. A library without pictures has nothing to look at.</summary>
internal static class FigureCheck
{
    /// <summary>What there is to say.</summary>
    public static IEnumerable<Finding> Judge(Library library, CheckSettings settings, CheckScope scope)
    {
        Figure[] figures = [.. library.Figures.Where(figure => scope.Holds(figure.Declared.Path))];
        var findings = new Finding?[figures.Length][];
        Parallel.For(0, figures.Length, i => findings[i] = Judge(figures[i], Examined(library, settings, figures[i])));
        return findings.SelectMany(some => some).OfType<Finding>();
    }

    /// <summary>What a picture turned out to be, by what the shop has chosen for the file that names it.</summary>
    public static ExaminedFigure Examined(Library library, CheckSettings settings, Figure figure) =>
        Examined(library, settings.For(figure.Declared.Path), figure);

    /// <summary>What a picture turned out to be.</summary>
    public static ExaminedFigure Examined(Library library, Settings.PathSettings settings, Figure figure) =>
        library.FindFigure(figure.Path).Examine(figure.Path, FigureSettings.Limits(settings));

    private static Finding?[] Judge(Figure figure, ExaminedFigure examined) => examined.Trouble switch
    {
        FigureTrouble.Missing or FigureTrouble.Unreadable or FigureTrouble.LeadsOut => [FigureMissing.At(figure, examined)],
        FigureTrouble.TooManyBytes or FigureTrouble.TooManyPixels => [FigureTooLarge.At(figure, examined)],
        FigureTrouble.WrongType or FigureTrouble.Damaged => [FigureOfWrongType.At(figure, examined)],
        _ =>
        [
            examined.Removed.IsEmpty ? null : FigureMadeSafe.At(figure, examined),
            examined.HadPosition ? FigureTellsWhere.At(figure) : null,
        ],
    };
}
