namespace ProcScript.Generate;

/// <summary>Makes files that follow from other files of the repository.</summary>
internal interface IGenerator
{
    /// <summary>The name that <c>--only</c> and <c>--skip</c> know it by.</summary>
    string Name { get; }

    /// <summary>
    /// A folder in which every file is this generator's, from the repository's root; a file in it that is no longer
    /// generated is deleted. Null when the generator owns single files only.
    /// </summary>
    string? OwnedFolder { get; }

    /// <summary>Makes the files, without touching the ones in the repository.</summary>
    /// <param name="root">The repository's root.</param>
    /// <exception cref="GenerationException">What it was to be made from, or with, is missing or wrong.</exception>
    IReadOnlyList<GeneratedFile> Generate(string root);
}
