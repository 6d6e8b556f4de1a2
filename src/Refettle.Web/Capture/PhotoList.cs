namespace Refettle.Web.Capture;

/// <summary>Photos by what they show.</summary>
public static class PhotoList
{
    /// <summary>Those of a thing, newest first; a part has those of its joints too.</summary>
    public static ValueList<Photo> Of(Car car, string thing)
    {
        var things = thing.Split(' ') is ["part", var part]
            ? car.Structure.Joints.Where(joint => joint.Holds.Contains(part)).Select(joint => $"joint {joint.Id}").Append(thing).ToHashSet()
            : [thing];
        return car.Photos.Reverse().Where(photo => photo.Of.Any(things.Contains)).ToValueList();
    }
}
