using System.Collections.Immutable;
using ProcScript.Analysis.Settings;

namespace ProcScript.Cards.Labels;

/// <summary>
/// A sheet of labels to print bag labels on, named by the millimetres of a label. All lengths are in millimetres; left and top are those of the
/// first label, pitches go from one label to the next.
/// </summary>
/// <param name="Stock">The choice of the setting that it is.</param>
/// <param name="Paper">The paper's name.</param>
/// <param name="PageWidth">The width of the sheet.</param>
/// <param name="PageHeight">The height of the sheet.</param>
/// <param name="Columns">How many labels stand beside each other.</param>
/// <param name="Rows">How many stand below each other.</param>
/// <param name="Width">The width of a label.</param>
/// <param name="Height">The height of a label.</param>
/// <param name="Left">From the left edge of the sheet to the first label.</param>
/// <param name="Top">From the top edge of the sheet to the first label.</param>
/// <param name="PitchX">From one column to the next.</param>
/// <param name="PitchY">From one row to the next.</param>
public sealed record LabelSheet(
    LabelStock Stock,
    string Paper,
    double PageWidth,
    double PageHeight,
    int Columns,
    int Rows,
    double Width,
    double Height,
    double Left,
    double Top,
    double PitchX,
    double PitchY)
{
    private const double Inch = 25.4;

    /// <summary>
    /// The sheets that are known. Columns, rows and sizes of 70 × 36, 70 × 37, 99.1 × 67.7, 101.6 × 50.8 and 101.6 × 84.7 were read in open,
    /// published lists of label sheets (the template files of a free label program, which several makers' sheets share); 105 × 57 is from memory.
    /// On A4 they are centred on the sheet, as their makers say; on Letter the margins are those of the lists. Measure your own sheet, and print on
    /// plain paper first.
    /// </summary>
    public static ImmutableArray<LabelSheet> All { get; } =
    [
        OnA4(LabelStock.A4Of24, 3, 8, 70, 36, 0),
        OnA4(LabelStock.A4Of24WithoutMargins, 3, 8, 70, 37, 0),
        OnA4(LabelStock.A4Of10, 2, 5, 105, 57, 0),
        OnA4(LabelStock.A4Of8, 2, 4, 99.1, 67.7, 2.5),
        OnLetter(LabelStock.LetterOf10, 2, 5, 4 * Inch, 2 * Inch),
        OnLetter(LabelStock.LetterOf6, 2, 3, 4 * Inch, 10 * Inch / 3),
    ];

    /// <summary>How many labels are on a sheet.</summary>
    public int Count => Columns * Rows;

    /// <summary>The sheet that is chosen; null for plain paper.</summary>
    public static LabelSheet? Of(LabelStock stock) => All.FirstOrDefault(sheet => sheet.Stock == stock);

    private static LabelSheet OnA4(LabelStock stock, int columns, int rows, double width, double height, double gap) => new(
        stock,
        "A4",
        210,
        297,
        columns,
        rows,
        width,
        height,
        (210 - (columns * width) - ((columns - 1) * gap)) / 2,
        (297 - (rows * height)) / 2,
        width + gap,
        height);

    /// <summary>Two columns 4 3/16 in apart, 5/32 in from the left and 1/2 in from the top.</summary>
    private static LabelSheet OnLetter(LabelStock stock, int columns, int rows, double width, double height) =>
        new(stock, "Letter", 8.5 * Inch, 11 * Inch, columns, rows, width, height, 5 * Inch / 32, Inch / 2, 67 * Inch / 16, height);
}
