namespace ProcScript.Cli.Output;

/// <summary>A mark under a line of source.</summary>
/// <param name="Start">Its first column, counted from 0.</param>
/// <param name="End">The column after its last; a mark has at least one.</param>
/// <param name="IsPrimary">Whether it says where to act.</param>
/// <param name="Label">What it says; may be empty.</param>
/// <param name="Ink">Its colour.</param>
internal readonly record struct Mark(int Start, int End, bool IsPrimary, string Label, Ink Ink)
{
    /// <summary>What it is drawn with.</summary>
    public char Sign => IsPrimary ? '^' : '-';
}
