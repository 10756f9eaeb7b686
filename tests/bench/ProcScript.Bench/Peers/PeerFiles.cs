using System.Globalization;
using System.Text;

namespace ProcScript.Bench.Peers;

/// <summary>
/// Texts of about a hundred lines for compilers and linters of other languages, as many lines in as many files as the library they are
/// measured beside. Three of four files use the fourth, as procedures use their machine, and each is clean.
/// </summary>
internal static class PeerFiles
{
    /// <summary>How many lines a file has.</summary>
    public const int LinesOfAFile = 100;

    private const int FilesOfAGroup = 4;

    /// <summary>Modules of TypeScript, with a project file.</summary>
    public static void WriteTypeScript(string folder, int files)
    {
        Write(folder, "tsconfig.json", """
            { "compilerOptions": { "strict": true, "noEmit": true, "target": "es2022", "module": "esnext", "moduleResolution": "bundler", "types": [] }, "include": ["*.ts"] }
            """);
        for (var file = 0; file < files; file++)
        {
            StringBuilder text = new();
            if (UsesAnother(file))
            {
                text.Append(CultureInfo.InvariantCulture, $"import {{ Shape{UsedBy(file)}_0, area{UsedBy(file)}_0 }} from './module{UsedBy(file)}';\n");
            }

            for (var i = 0; LinesOf(text) + 9 <= LinesOfAFile; i++)
            {
                var name = string.Create(CultureInfo.InvariantCulture, $"{file}_{i}");
                text.Append(CultureInfo.InvariantCulture, $$"""
                    export interface Shape{{name}} { readonly width: number; readonly height: number; label?: string }
                    export function area{{name}}(shape: Shape{{name}}): number {
                      const width = shape.width > 0 ? shape.width : 0;
                      const height = shape.height > 0 ? shape.height : 0;
                      return width * height + {{i}};
                    }
                    export const named{{name}}: Shape{{name}} = { width: {{i}}, height: 2, label: 'shape {{name}}' };
                    export const total{{name}} = area{{name}}(named{{name}}) + named{{name}}.width;

                    """);
            }

            if (UsesAnother(file))
            {
                text.Append(CultureInfo.InvariantCulture, $"export const before{file} = (shape: Shape{UsedBy(file)}_0): number => area{UsedBy(file)}_0(shape);\n");
            }

            Write(folder, string.Create(CultureInfo.InvariantCulture, $"module{file}.ts"), text.ToString());
        }
    }

    /// <summary>Messages of protocol buffers, with the linter's project file.</summary>
    public static void WriteProtocolBuffers(string folder, int files)
    {
        Write(folder, "buf.yaml", "version: v2\nlint:\n  use:\n    - STANDARD\n");
        for (var file = 0; file < files; file++)
        {
            StringBuilder text = new();
            text.Append(CultureInfo.InvariantCulture, $"syntax = \"proto3\";\n\npackage bench.v1;\n\n");
            if (UsesAnother(file))
            {
                text.Append(CultureInfo.InvariantCulture, $"import \"bench/v1/file{UsedBy(file)}.proto\";\n\n");
            }

            for (var i = 0; LinesOf(text) + 8 <= LinesOfAFile; i++)
            {
                text.Append(CultureInfo.InvariantCulture, $$"""
                    // A shape of the bench.
                    message Shape{{file}}N{{i}} {
                      string label = 1;
                      double width = 2;
                      repeated double heights = 3;
                    {{(UsesAnother(file) ? string.Create(CultureInfo.InvariantCulture, $"  Shape{UsedBy(file)}N0 before = 4;\n") : "")}}}

                    """);
            }

            Write(Path.Combine(folder, "bench", "v1"), string.Create(CultureInfo.InvariantCulture, $"file{file}.proto"), text.ToString());
        }
    }

    /// <summary>Templates of Bicep, each with a module that is another.</summary>
    public static void WriteBicep(string folder, int files)
    {
        for (var file = 0; file < files; file++)
        {
            StringBuilder text = new();
            text.Append("param place string = 'a'\nparam count int = 1\n\n");
            if (UsesAnother(file))
            {
                text.Append(CultureInfo.InvariantCulture, $"module before 'file{UsedBy(file)}.bicep' = {{\n  name: 'before'\n  params: {{\n    place: place\n    count: count\n  }}\n}}\n\n");
            }

            StringBuilder sum = new("count");
            for (var i = 0; LinesOf(text) + 7 <= LinesOfAFile; i++)
            {
                text.Append(CultureInfo.InvariantCulture, $$"""
                    var shape{{i}} = {
                      label: '${place}-{{i}}'
                      width: count + {{i}}
                      heights: map(range(0, 3), step => step + count)
                    }

                    """);
                sum.Append(CultureInfo.InvariantCulture, $" + shape{i}.width + length(shape{i}.heights) + length(shape{i}.label)");
            }

            text.Append(CultureInfo.InvariantCulture, $"\noutput total int = {sum}\n");
            if (UsesAnother(file))
            {
                text.Append("output before int = before.outputs.total\n");
            }

            Write(folder, string.Create(CultureInfo.InvariantCulture, $"file{file}.bicep"), text.ToString());
        }
    }

    private static bool UsesAnother(int file) => UsedBy(file) != file;

    private static int UsedBy(int file) => file - (file % FilesOfAGroup);

    private static int LinesOf(StringBuilder text)
    {
        var lines = 0;
        foreach (var chunk in text.GetChunks())
        {
            lines += chunk.Span.Count('\n');
        }

        return lines;
    }

    private static void Write(string folder, string name, string text)
    {
        Directory.CreateDirectory(folder);
        File.WriteAllText(Path.Combine(folder, name), text);
    }
}
