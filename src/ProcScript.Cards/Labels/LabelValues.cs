using System.Globalization;
using ProcScript.Analysis.Plans;
using ProcScript.Cards.Templating;
using Scriban.Runtime;

namespace ProcScript.Cards.Labels;

/// <summary>What templates can name of a sheet of labels. Lengths are in millimetres and in words, as a style sheet has them.</summary>
internal static class LabelValues
{
    /// <summary>The sheet, with the places of its columns and rows.</summary>
    public static ScriptObject Sheet(LabelSheet sheet) => new()
    {
        ["paper"] = sheet.Paper,
        ["pageWidth"] = Length(sheet.PageWidth),
        ["pageHeight"] = Length(sheet.PageHeight),
        ["columns"] = sheet.Columns,
        ["rows"] = sheet.Rows,
        ["width"] = Length(sheet.Width),
        ["height"] = Length(sheet.Height),
        ["lefts"] = new ScriptArray(Enumerable.Range(0, sheet.Columns).Select(column => Length(sheet.Left + (column * sheet.PitchX)))),
        ["tops"] = new ScriptArray(Enumerable.Range(0, sheet.Rows).Select(row => Length(sheet.Top + (row * sheet.PitchY)))),
        ["points"] = Length(LabelPages.Points(sheet)),
        ["sidePadding"] = Length(LabelPages.SidePadding),
        ["endPadding"] = Length(LabelPages.EndPadding),
    };

    /// <summary>The labels of each page.</summary>
    public static ScriptArray Pages(Plan plan, LabelSheet sheet) =>
        new(LabelPages.Of(plan.Bags, sheet).GroupBy(label => label.Sheet, Label).Select(page => new ScriptArray(page)));

    private static ScriptObject Label(BagLabel label) => new()
    {
        ["bag"] = label.Bag.Number,
        ["first"] = label.First,
        ["count"] = label.Count,
        ["part"] = label.Part,
        ["parts"] = label.Parts,
        ["column"] = label.Column,
        ["row"] = label.Row,
    };

    /// <summary>A figure stands in a style sheet as it is, outside all quotes.</summary>
    private static Markup Length(double millimetres) => new(millimetres.ToString("0.####", CultureInfo.InvariantCulture));
}
