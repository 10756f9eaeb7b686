using System.Text;

namespace ProcScript.Cli.Tests;

/// <summary>A folder of its own for one test; its name has a blank and letters outside ASCII, as users' folders do.</summary>
internal sealed class TemporaryFolder : IDisposable
{
    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false);

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("procscript tëst ");

    public string Path => _folder.FullName;

    public string this[string path] => System.IO.Path.Combine(Path, path);

    public TemporaryFolder With(string path, string content) => With(path, Utf8.GetBytes(content));

    public TemporaryFolder With(string path, byte[] content)
    {
        Directory.CreateDirectory(System.IO.Path.GetDirectoryName(this[path])!);
        File.WriteAllBytes(this[path], content);
        return this;
    }

    public TemporaryFolder WithFolder(string path)
    {
        Directory.CreateDirectory(this[path]);
        return this;
    }

    public string Read(string path) => File.ReadAllText(this[path]);

    /// <summary>Every file, relative, with forward slashes, in order.</summary>
    public IEnumerable<string> Files() =>
        _folder.EnumerateFiles("*", SearchOption.AllDirectories)
            .Select(file => System.IO.Path.GetRelativePath(Path, file.FullName).Replace('\\', '/'))
            .Order(StringComparer.Ordinal);

    public void Dispose() => _folder.Delete(recursive: true);
}
