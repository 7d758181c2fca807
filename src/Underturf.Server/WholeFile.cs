namespace Underturf.Server;

/// <summary>Writes files whole or not at all.</summary>
public static class WholeFile
{
    /// <summary>Writes beside the target first, so that a stop in between leaves the old file whole; what cannot be finished is cleared away.</summary>
    /// <param name="ready">Asked when all is written and before it takes the target's place; false leaves the target as it is.</param>
    /// <returns>Whether it took the target's place.</returns>
    public static bool Write(string path, ReadOnlySpan<byte> bytes, Func<bool>? ready = null)
    {
        var beside = path + ".part";
        try
        {
            using (var stream = new FileStream(beside, FileMode.Create))
            {
                stream.Write(bytes);
                stream.Flush(flushToDisk: true);
            }

            if (ready?.Invoke() == false)
            {
                File.Delete(beside);
                return false;
            }

            File.Move(beside, path, overwrite: true);
            return true;
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            File.Delete(beside);
            throw;
        }
    }
}
