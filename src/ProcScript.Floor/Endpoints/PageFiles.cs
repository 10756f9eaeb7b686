using System.Collections.Frozen;
using System.Reflection;
using System.Security.Cryptography;
using System.Text;

namespace ProcScript.Floor.Endpoints;

/// <summary>The page and what it is made of: files in the program, the same for everybody.</summary>
internal sealed class PageFiles
{
    private const string Folder = "Page/";
    private const string Shell = "index.html";
    private const string Worker = "worker.js";
    private const string VersionMark = "{{version}}";
    private const string FilesMark = "{{files}}";

    private static readonly FrozenDictionary<string, string> Types = new Dictionary<string, string>(StringComparer.Ordinal)
    {
        ["html"] = "text/html; charset=utf-8",
        ["css"] = "text/css; charset=utf-8",
        ["js"] = "text/javascript; charset=utf-8",
        ["json"] = "application/json; charset=utf-8",
        ["svg"] = "image/svg+xml",
        ["webmanifest"] = "application/manifest+json",
    }.ToFrozenDictionary(StringComparer.Ordinal);

    private readonly FrozenDictionary<string, byte[]> _files = Read();
    private readonly string _version;

    /// <summary>Reads them.</summary>
    public PageFiles()
    {
        _version = Convert.ToHexStringLower(SHA256.HashData([.. _files.OrderBy(file => file.Key, StringComparer.Ordinal).SelectMany(file => file.Value)]))[..16];
    }

    /// <summary>Says where they are reached. Every address that people see is the same page, which finds out itself what it shows.</summary>
    public void Map(IEndpointRouteBuilder routes)
    {
        foreach (var address in new[] { "/", "/pair", "/j/{job}", "/b/{job}/{bag:int}" })
        {
            routes.MapGet(address, context => GiveAsync(context, Shell));
        }

        // A worker looks after what lies beside it and below: it has to lie at the top.
        routes.MapGet($"/{Worker}", WorkerAsync);
        foreach (var file in _files.Keys.Where(name => name is not (Shell or Worker)))
        {
            routes.MapGet($"/page/{file}", context => GiveAsync(context, file));
        }
    }

    private async Task GiveAsync(HttpContext context, string name)
    {
        var tag = $"\"{_version}\"";
        context.Response.Headers.ETag = tag;
        context.Response.Headers.CacheControl = "no-cache";
        context.Response.ContentType = Types[name[(name.LastIndexOf('.') + 1)..]];
        if (context.Request.Headers.IfNoneMatch == tag)
        {
            context.Response.StatusCode = StatusCodes.Status304NotModified;
            return;
        }

        await context.Response.Body.WriteAsync(_files[name], context.RequestAborted);
    }

    private async Task WorkerAsync(HttpContext context)
    {
        context.Response.Headers.CacheControl = "no-cache";
        context.Response.ContentType = Types["js"];
        var files = string.Join(' ', _files.Keys.Where(name => name is not (Shell or Worker)).Order(StringComparer.Ordinal).Select(name => $"/page/{name}"));
        var text = Encoding.UTF8.GetString(_files[Worker]).Replace(VersionMark, _version, StringComparison.Ordinal).Replace(FilesMark, files, StringComparison.Ordinal);
        await context.Response.WriteAsync(text, context.RequestAborted);
    }

    private static FrozenDictionary<string, byte[]> Read()
    {
        var program = Assembly.GetExecutingAssembly();
        return program.GetManifestResourceNames().Where(name => name.StartsWith(Folder, StringComparison.Ordinal)).ToFrozenDictionary(
            name => name[Folder.Length..],
            name =>
            {
                using var file = program.GetManifestResourceStream(name)!;
                using MemoryStream read = new();
                file.CopyTo(read);
                return read.ToArray();
            },
            StringComparer.Ordinal);
    }
}
