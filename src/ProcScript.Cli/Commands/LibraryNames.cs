using System.CommandLine;
using System.CommandLine.Completions;
using ProcScript.Cli.Crews;
using ProcScript.Cli.Sources;
using ProcScript.Model;
using ProcScript.Model.Names;

namespace ProcScript.Cli.Commands;

/// <summary>Completes what is named in a library, wherever a command asks for such a name.</summary>
/// <param name="read">Where the library is, of what has been typed so far.</param>
/// <param name="around">The surroundings.</param>
internal sealed class LibraryNames(Func<ParseResult, InputRequest> read, Surroundings around)
{
    /// <summary>The procedures, with their arguments behind hyphens.</summary>
    public static IEnumerable<string> Jobs(Library library) => library.Procedures.Select(procedure => procedure.Job);

    /// <summary>The procedures, by their names alone.</summary>
    public static IEnumerable<string> Procedures(Library library) => library.Procedures.Select(procedure => procedure.Name);

    /// <summary>The machines.</summary>
    public static IEnumerable<string> Machines(Library library) => library.Machines.Select(machine => machine.Name);

    /// <summary>What stands on the machines.</summary>
    public static IEnumerable<string> Items(Library library) => library.Machines.SelectMany(machine => machine.Items.Keys).Select(CanonicalName.Written);

    /// <summary>The certificates of the catalog, each ready for the number of those who hold it.</summary>
    public static IEnumerable<string> Holders(Library library) => CertifiedPeople.Declared(library).Select(name => name + "=");

    /// <summary>Completes an argument.</summary>
    public void Complete(Argument argument, Func<Library, IEnumerable<string>> names) => argument.CompletionSources.Add(context => Offers(context, names));

    /// <summary>Completes the value of an option.</summary>
    public void Complete(Option option, Func<Library, IEnumerable<string>> names) => option.CompletionSources.Add(context => Offers(context, names));

    /// <summary>Who presses the tab key is told nothing of a library that cannot be read; the command will.</summary>
    private IEnumerable<CompletionItem> Offers(CompletionContext context, Func<Library, IEnumerable<string>> names)
    {
        try
        {
            var library = LibraryBinder.Bind(new DiskSourceStore(SourceSelection.Find(read(context.ParseResult), around.CurrentFolder), around.OpenInput), CancellationToken.None);
            return [.. names(library).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).Select(name => new CompletionItem(name))];
        }
        catch (Exception fault) when (fault is UsageException or IOException or UnauthorizedAccessException or InvalidOperationException)
        {
            return [];
        }
    }
}
