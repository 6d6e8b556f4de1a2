using Refettle.Checks;
using Refettle.Sheets.Csv;
using Refettle.Sheets.Reading;
using Refettle.Sheets.Tree;

namespace Refettle.Sheets;

/// <summary>Reads parts and joints from two CSV files, as a spreadsheet saves them.</summary>
public static class SpreadsheetReader
{
    /// <summary>What the files describe, or all their faults. A fault's column is the number of the cell in its row.</summary>
    /// <param name="parts">Text of the file of parts.</param>
    /// <param name="joints">Text of the file of joints; empty when there is none yet.</param>
    /// <param name="car">What the car has already: its parts, zones and states may be named.</param>
    public static Result<Structure> Read(string parts, string partsFile, string joints, string jointsFile, Structure car)
    {
        var (inParts, inJoints) = (new FaultList(partsFile), new FaultList(jointsFile));
        var (partPlaces, jointPlaces) = (new Places(), new Places());
        var read = new Structure
        {
            Parts = Section("parts", new CsvThings(inParts).Parts(CsvTable.Read(parts, CsvThings.PartColumns, inParts)), inParts,
                partPlaces).Parts,
            Joints = joints.Length == 0 ? [] : Section("joints",
                new CsvThings(inJoints).Joints(CsvTable.Read(joints, CsvThings.JointColumns, inJoints)), inJoints, jointPlaces).Joints,
        };
        foreach (var fault in StructureCheck.Of(car.With(read)).Except(StructureCheck.Of(car)))
        {
            if (jointPlaces.Has(fault.Place))
                inJoints.Add(jointPlaces.Locate(fault));
            else
                inParts.Add(partPlaces.Locate(fault));
        }

        ValueList<Fault> faults = [.. inParts.ToList(), .. inJoints.ToList()];
        return inParts.HasErrors || inJoints.HasErrors ? Result<Structure>.Bad(faults) : Result<Structure>.Good(read, faults);
    }

    private static Structure Section(string section, Mapping things, FaultList faults, Places places)
    {
        var root = new Mapping(1, 1, [new(new(1, 1, section, true), things)]);
        return StructureReader.Read(new(root, "file", new(faults, Origin.User, Braces: null)), places);
    }
}
