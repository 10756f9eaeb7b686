namespace ProcScript.Generate;

/// <summary>Finds the repository that this program was built in.</summary>
internal static class RepositoryRoot
{
    private const string Mark = "ProcScript.sln";

    /// <summary>The nearest folder above the program that holds the solution.</summary>
    public static string Find()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, Mark)))
            {
                return folder.FullName;
            }
        }

        throw new GenerationException($"No folder above {AppContext.BaseDirectory} holds {Mark}: run from a checkout.");
    }
}
