namespace Refettle.Paper.Tests;

/// <summary>Gives a small JPEG for every name but "gone".</summary>
internal sealed class Snapshots : IPictureSource
{
    /// <summary>64 × 48 pixels, baseline.</summary>
    public static byte[] Jpeg { get; } = Convert.FromBase64String(
        "/9j/4AAQSkZJRgABAQAAAQABAAD/2wBDABsSFBcUERsXFhceHBsgKEIrKCUlKFE6PTBCYFVlZF9VXVtqeJmBanGQc1tdhbWGkJ6jq62rZ4C8ybqmx5moq6T/2wBDARweHigjKE4rK06kbl1upKSkpKSkpKSkpKSkpKSkpKSkpKSkpKSkpKSkpKSkpKSkpKSkpKSkpKSkpKSkpKSkpKT/wAARCAAwAEADASIAAhEBAxEB/8QAHwAAAQUBAQEBAQEAAAAAAAAAAAECAwQFBgcICQoL/8QAtRAAAgEDAwIEAwUFBAQAAAF9AQIDAAQRBRIhMUEGE1FhByJxFDKBkaEII0KxwRVS0fAkM2JyggkKFhcYGRolJicoKSo0NTY3ODk6Q0RFRkdISUpTVFVWV1hZWmNkZWZnaGlqc3R1dnd4eXqDhIWGh4iJipKTlJWWl5iZmqKjpKWmp6ipqrKztLW2t7i5usLDxMXGx8jJytLT1NXW19jZ2uHi4+Tl5ufo6erx8vP09fb3+Pn6/8QAHwEAAwEBAQEBAQEBAQAAAAAAAAECAwQFBgcICQoL/8QAtREAAgECBAQDBAcFBAQAAQJ3AAECAxEEBSExBhJBUQdhcRMiMoEIFEKRobHBCSMzUvAVYnLRChYkNOEl8RcYGRomJygpKjU2Nzg5OkNERUZHSElKU1RVVldYWVpjZGVmZ2hpanN0dXZ3eHl6goOEhYaHiImKkpOUlZaXmJmaoqOkpaanqKmqsrO0tba3uLm6wsPExcbHyMnK0tPU1dbX2Nna4uPk5ebn6Onq8vP09fb3+Pn6/9oADAMBAAIRAxEAPwDBCU8JUgSnhK7HIiMyMJTwlSBKeEqHI6YzIwlPCVIEp4SocjpjMiCU8JUgSnhKhyOmMykEp4SpAlPCVTkfNRmRhKeEqQJTwlZuR1RmRhKcEqUJTglQ5HTGZGEp4SpAlPCVDkdMZlIJTwlSBKeEqnI+ajMjCU8JUgSnhKhyOmMyMJTglShKcEqHI6YzIwlPCVIEp4SocjpjM//Z");

    public byte[]? Read(string name, int mostPixels) => name == "gone" ? null : Jpeg;
}
