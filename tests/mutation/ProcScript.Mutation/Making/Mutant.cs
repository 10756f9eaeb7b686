namespace ProcScript.Mutation.Making;

/// <summary>One change of the code.</summary>
/// <param name="Number">Its number, from 1, the same whenever the code is.</param>
/// <param name="Unit">The body or initialiser that it is in: what is known to be reached or not.</param>
/// <param name="Path">The file, relative to the room.</param>
/// <param name="Line">The line, counted from 1.</param>
/// <param name="Before">What is there.</param>
/// <param name="After">What is there instead.</param>
/// <param name="IsInitialiser">Whether it is part of what is computed once, when its type is first used.</param>
internal sealed record Mutant(int Number, int Unit, string Path, int Line, string Before, string After, bool IsInitialiser)
{
    /// <summary>The first folder of the path.</summary>
    public string Folder => Path.Split('/')[0];
}
