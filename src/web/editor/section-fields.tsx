import type { FieldsContext } from "./fields/fields-context.ts";
import { SheetField } from "./fields/sheet-fields.tsx";
import { formAt } from "./model/field-form.ts";
import type { PartName } from "./model/sections.ts";
import { sheetValueAt } from "./model/sheet-value.ts";
import { AxleFields } from "./sections/axle-fields.tsx";
import { CarFields } from "./sections/car-fields.tsx";
import { JointsSection } from "./sections/joints-section.tsx";
import { PointsSection } from "./sections/points-section.tsx";
import { WholeFile } from "./sections/whole-file.tsx";

interface SectionFieldsProps {
  readonly context: FieldsContext;
  readonly part: PartName;
  readonly section: string;
}

/** Sections of an axle whose fields are those of one knuckle. */
const OF_ONE_KNUCKLE: readonly string[] = ["rubber", "links", "springs"];

/** The fields of the open section. */
export const SectionFields = ({ context, part, section }: SectionFieldsProps) => {
  switch (part) {
    case "front":
    case "rear":
      if (OF_ONE_KNUCKLE.includes(section) && sheetValueAt(context.editing.sheet, [part, "bodies"]) !== undefined)
        return (
          <>
            <p className="note">
              The linkage of this axle is one of several bodies: its points, joints, rubber, spring and damper stand in
              one piece of the file, which is changed here as a whole.
            </p>
            <SheetField context={context} path={[part, "bodies"]} form={formAt([part, "bodies"])} required />
          </>
        );
      if (section === "points") return <PointsSection context={context} axle={part} />;
      if (section === "rubber") return <JointsSection context={context} axle={part} />;
      return <AxleFields context={context} axle={part} section={section} />;
    case "work":
      return (
        <SheetField context={context} path={["work", section]} form={formAt(["work", section])} required={false} />
      );
    case "car":
      if (section === "identity") return <CarFields context={context} />;
      return <SheetField context={context} path={[section]} form={formAt([section])} required={false} />;
    case "file":
      return <WholeFile editing={context.editing} />;
  }
};
