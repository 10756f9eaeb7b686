namespace ProcScript.House.Tests;

public sealed class ArrowTests
{
    private static readonly IReadOnlyList<ProjectFile> Projects = ProjectFile.In("src");

    [Fact]
    public void No_project_draws_a_forbidden_arrow()
    {
        var broken =
            from project in Projects
            from reference in project.References
            from arrow in House.ForbiddenArrows
            where arrow.Forbids(project.Name, reference)
            select $"{project.Name} references {reference}. {arrow.Because}";

        Assert.Empty(broken);
    }

    [Theory]
    [InlineData("ProcScript.Syntax", "ProcScript.Model", true)]
    [InlineData("ProcScript.Cards", "ProcScript.Syntax", true)]
    [InlineData("ProcScript.Cards", "ProcScript.Cli", true)]
    [InlineData("ProcScript.Generate", "ProcScript.LanguageServer", true)]
    [InlineData("ProcScript.Cli", "ProcScript.Exact", true)]
    [InlineData("ProcScript.Cli", "ProcScript.Floor", true)]
    [InlineData("ProcScript.Model", "ProcScript.Syntax", false)]
    [InlineData("ProcScript.Cli", "ProcScript.LanguageServer", false)]
    [InlineData("ProcScript.Cli", "ProcScript.Cards", false)]
    public void A_forbidden_arrow_is_told_from_an_allowed_one(string from, string to, bool forbidden)
    {
        Assert.Equal(forbidden, House.ForbiddenArrows.Any(arrow => arrow.Forbids(from, to)));
    }

    [Fact]
    public void Each_room_references_the_room_directly_below_and_no_other()
    {
        string[] below = [];
        foreach (var room in House.Rooms)
        {
            Assert.Equal(below, Project(room).References);
            below = [room];
        }
    }

    [Fact]
    public void Each_face_references_the_top_room_and_no_other()
    {
        var faces = Projects.Where(project => House.Faces.Contains(project.Name)).ToList();

        Assert.NotEmpty(faces);
        Assert.All(faces, face => Assert.Equal([House.Rooms[^1]], face.References.Where(reference => !House.Hosted.Allows(face.Name, reference) && House.Shelves.All(shelf => shelf.Name != reference))));
    }

    [Fact]
    public void Each_companion_references_its_room_and_no_other()
    {
        Assert.All(House.Companions, companion => Assert.Equal([companion.Room], Project(companion.Name).References.Where(reference => House.Shelves.All(shelf => shelf.Name != reference))));
    }

    [Fact]
    public void Each_shelf_references_its_room_and_no_other()
    {
        Assert.All(House.Shelves, shelf => Assert.Equal([shelf.Room], Project(shelf.Name).References));
    }

    [Fact]
    public void Every_project_is_a_room_a_face_or_a_companion()
    {
        Assert.Empty(Projects.Select(project => project.Name).Except([.. House.Rooms, .. House.Faces, .. House.Companions.Concat(House.Shelves).Select(companion => companion.Name)]));
    }

    [Fact]
    public void Every_room_has_the_banned_calls_watched()
    {
        Assert.All(House.Rooms.Append(House.Hosted.Name), room => Assert.Equal("true", Project(room).Property("BelowTheFaces")));
        Assert.Contains("BannedSymbols.txt", Repository.Read("src/Directory.Build.targets"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_package_with_a_home_is_referenced_only_there()
    {
        var strays =
            from project in ProjectFile.In(".")
            from package in project.Packages
            from home in House.PackageHomes
            where package == home.Package && !home.Projects.Contains(project.Name)
            select $"{project.Name} references {package}. {home.Because}";

        Assert.Empty(strays);
    }

    [Fact]
    public void Only_the_syntax_room_mentions_the_parser_library()
    {
        var strays = Repository.Files("src", "*.cs")
            .Where(path => !path.StartsWith("src/ProcScript.Syntax/", StringComparison.Ordinal))
            .Where(path => Repository.Read(path).Contains("Antlr4", StringComparison.Ordinal));

        Assert.Empty(strays);
    }

    [Fact]
    public void Every_generated_parser_type_is_internal()
    {
        var generated = Repository.Files("src/ProcScript.Syntax/Generated", "*.cs");
        var leaks = generated.Where(path => Repository.Lines(path).Any(line => line.StartsWith("public ", StringComparison.Ordinal)));

        Assert.NotEmpty(generated);
        Assert.Empty(leaks);
    }

    private static ProjectFile Project(string name) => Projects.Single(project => project.Name == name);
}
