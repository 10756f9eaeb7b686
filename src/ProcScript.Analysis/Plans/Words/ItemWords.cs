using ProcScript.Analysis.Bolts;
using ProcScript.Analysis.Messages;
using ProcScript.Model.Catalog;
using ProcScript.Model.Machines;
using ProcScript.Model.Quantities;

namespace ProcScript.Analysis.Plans.Words;

/// <summary>Items and what they are made of, as cards call them.</summary>
internal static class ItemWords
{
    /// <summary>A number of pieces: <c>4 × M10 × 30 bolt</c>.</summary>
    public static string Pieces(int count, string title) => $"{count} × {title}";

    /// <summary>Where a joint is: the part it belongs to, and the author's words; of a cover, those of the joint under it.</summary>
    public static string Place(Joint joint) =>
        (joint.At ?? joint.Over?.At) is { } at ? $"{joint.Owner.Title}, {at}" : joint.Owner.Title;

    /// <summary>Where an energy is proved to be off; empty where it is not said.</summary>
    public static string Place(VerifyPlace place) => place.Item is { } item ? Whole(item) : place.Words;

    /// <summary>An item by itself: <c>evaporator</c>, <c>4 × M8 × 25 flange bolt (evaporator)</c>.</summary>
    public static string Whole(MachineItem item) =>
        item is Joint joint ? $"{Pieces(joint.Count, joint.Kind.Title)} ({Place(joint)})" : item.Title;

    /// <summary>A kind, with the hand of its thread where that is the left one and its title does not say so.</summary>
    public static string Of(Kind kind, Wordbook book) =>
        ThreadDesignation.SaysLeftHand(kind.Thread)
        && !ThreadDesignation.SaysLeftHand(kind.Title)
        && !kind.Title.Contains("left-hand", StringComparison.OrdinalIgnoreCase)
        && !kind.Title.Contains("left hand", StringComparison.OrdinalIgnoreCase)
            ? book.Say("item.left-hand", ("title", kind.Title))
            : kind.Title;

    /// <summary>A position of a control.</summary>
    public static string Position(Control control, int position) => control.PositionTitles[position];

    /// <summary>A tool with its size, where its title does not say that.</summary>
    public static string Of(Tool tool, Wordbook book) =>
        tool.Size is { } size && !tool.Title.Contains(size.Print(), StringComparison.OrdinalIgnoreCase)
            ? $"{tool.Title}, {book.Print(size)}"
            : tool.Title;
}
