namespace ProcScript.House.Tests;

/// <summary>The rooms, from the ground up, and what must never be built between them.</summary>
internal static class House
{
    /// <summary>The rooms below the faces: each builds on the one before it.</summary>
    public static IReadOnlyList<string> Rooms { get; } =
        ["ProcScript.Syntax", "ProcScript.Model", "ProcScript.Analysis", "ProcScript.Jobs", "ProcScript.Cards"];

    /// <summary>What stands on the top room. A face holds no rule of its own.</summary>
    public static IReadOnlyList<string> Faces { get; } = ["ProcScript.Cli", "ProcScript.LanguageServer", "ProcScript.Generate"];

    /// <summary>
    /// Tools of their own, each with the one room that it stands on: nothing references them, and the program that starts one is no larger for it.
    /// </summary>
    public static IReadOnlyList<Companion> Companions { get; } = [new("ProcScript.Exact", "ProcScript.Analysis"), new("ProcScript.Floor", "ProcScript.Cards")];

    /// <summary>What faces share that reaches for files, each with the room that it stands on.</summary>
    public static IReadOnlyList<Companion> Shelves { get; } = [new("ProcScript.Jobs.Files", "ProcScript.Jobs")];

    /// <summary>A face that another puts on: the program is one, and the language server is a verb of it.</summary>
    public static HostedFace Hosted { get; } = new("ProcScript.Cli", "ProcScript.LanguageServer");

    /// <summary>Arrows that break the house, each with the sentence that tells why.</summary>
    public static IReadOnlyList<ForbiddenArrow> ForbiddenArrows { get; } =
    [
        new("ProcScript.Syntax", "ProcScript.*", "Syntax is the ground: a tree belongs to one text and holds no meaning."),
        new("ProcScript.Model", "ProcScript.Analysis", "The model says what is there; whether the work can be done is judged above it."),
        new("ProcScript.Model", "ProcScript.Cards", "The model knows nothing of what is printed from it."),
        new("ProcScript.Analysis", "ProcScript.Cards", "Analysis ends in the plan; how a plan looks on paper is the cards' affair."),
        new("ProcScript.Analysis", "ProcScript.Jobs", "Analysis judges what is planned; what happened on the floor is played above it."),
        new("ProcScript.Jobs", "ProcScript.Cards", "A job record knows the plan, and nothing of paper."),
        new("ProcScript.Cards", "ProcScript.Syntax", "Cards see the plan and nothing else: no tree and no text."),
        new("ProcScript.Cards", "ProcScript.Model", "Cards see the plan and nothing else: what they need of the model, the plan says."),
        new("ProcScript.*", "ProcScript.Cli", "A face is called by people, never by another project: move what you need down into a room."),
        new("ProcScript.*", "ProcScript.LanguageServer", "Editors call the language server, through the program that hosts it: move what you need down into a room.")
        {
            Except = "ProcScript.Cli",
        },
        new("ProcScript.*", "ProcScript.Exact", "The exact planner brings a solver of native code along: it is started as a program, and never built in."),
        new("ProcScript.*", "ProcScript.Floor", "The shop's server brings a web server and a database's driver along: it is started as a program, and never built in."),
        new("ProcScript.*", "ProcScript.Generate", "The generator writes source files and is part of no program."),
    ];

    /// <summary>Packages that only some projects may use, each with the sentence that tells why.</summary>
    public static IReadOnlyList<PackageHome> PackageHomes { get; } =
    [
        new(
            "Antlr4.Runtime.Standard",
            ["ProcScript.Syntax", "ProcScript.Syntax.Tests", "ProcScript.Fuzz"],
            "The parser's generated types never leave Syntax; the tree above them is our own."),
        new("Scriban.Signed", ["ProcScript.Cards"], "Templates are filled in Cards, from the plan."),
        new("Microsoft.Extensions.FileSystemGlobbing", ["ProcScript.Analysis"], "Paths are chosen by the settings, which Analysis reads."),
        new("Microsoft.CodeAnalysis.CSharp", ["ProcScript.Mutation"], "Only the tool that changes the code to try the tests compiles any."),
        new("Google.OrTools", ["ProcScript.Exact"], "The solver is native code for each platform: it stays in a tool of its own."),
        new("Microsoft.Data.Sqlite", ["ProcScript.Floor"], "An index is for a server that lists thousands of jobs all day; the journals are the truth."),
        new("QRCoder", ["ProcScript.Cards"], "Codes to scan are drawn in Cards."),
        new("Markdig", ["ProcScript.Cards"], "Prose is rendered in Cards."),
        new("Npgsql", ["ProcScript.Floor", "ProcScript.Floor.Tests"], "Only a server keeps jobs in a database."),
        new("StreamJsonRpc", ["ProcScript.LanguageServer"], "Only the language server speaks JSON-RPC."),
        new("Spectre.Console", ["ProcScript.Cli"], "Only the command line draws on a terminal."),
        new("Sylvan.Data.Csv", ["ProcScript.Cli"], "Tables are files: the command line reads them, and hands on their cells."),
        new("System.CommandLine", ["ProcScript.Cli", "ProcScript.Floor", "ProcScript.Generate"], "Only a program with arguments reads arguments."),
    ];
}

/// <summary>A project that must not reference another; a name may end in <c>*</c>.</summary>
internal sealed record ForbiddenArrow(string From, string To, string Because)
{
    /// <summary>The one project that may.</summary>
    public string? Except { get; init; }

    public bool Forbids(string from, string to) => from != Except && Matches(From, from) && Matches(To, to);

    private static bool Matches(string pattern, string name) =>
        pattern.EndsWith('*') ? name.StartsWith(pattern[..^1], StringComparison.Ordinal) : name == pattern;
}

/// <summary>A face that another hosts.</summary>
internal sealed record HostedFace(string By, string Name)
{
    public bool Allows(string from, string to) => from == By && to == Name;
}

/// <summary>A tool of its own and the room that it stands on.</summary>
internal sealed record Companion(string Name, string Room);

/// <summary>A package and the only projects that may reference it.</summary>
internal sealed record PackageHome(string Package, IReadOnlyList<string> Projects, string Because);
