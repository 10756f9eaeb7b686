namespace ProcScript.Analysis.Settings;

/// <summary>What bag labels are printed on: the plain paper of the pack, or sheets of labels, named by the millimetres of a label.</summary>
public enum LabelStock
{
    /// <summary>Plain paper, in the pack.</summary>
    Plain,

    /// <summary>70 × 36 mm, 3 × 8 on A4.</summary>
    A4Of24,

    /// <summary>70 × 37 mm, 3 × 8 on A4, without margins above and below.</summary>
    A4Of24WithoutMargins,

    /// <summary>105 × 57 mm, 2 × 5 on A4.</summary>
    A4Of10,

    /// <summary>99.1 × 67.7 mm, 2 × 4 on A4.</summary>
    A4Of8,

    /// <summary>101.6 × 50.8 mm (4 × 2 in), 2 × 5 on Letter.</summary>
    LetterOf10,

    /// <summary>101.6 × 84.7 mm (4 × 3 1/3 in), 2 × 3 on Letter.</summary>
    LetterOf6,
}
