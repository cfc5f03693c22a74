package club.emberwell.report;

import club.emberwell.laser.Process;
import club.emberwell.report.reading.Filed;
import club.emberwell.report.reading.Work;
import club.emberwell.report.reading.WorkProperty;
import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;

/**
 * Columns of what was done to what. A word stands in the field of its property's code and, as it
 * was written, in the one beside it.
 */
@Embeddable
class WorkColumns {
  private Process process;

  private String material;

  @Column(name = "material_written")
  private String materialWritten;

  private String coating;

  @Column(name = "coating_written")
  private String coatingWritten;

  private String colour;

  @Column(name = "colour_written")
  private String colourWritten;

  @Column(name = "thickness_mm")
  private Double thicknessMm;

  @Column(name = "result_colour")
  private String resultColour;

  @Column(name = "result_colour_written")
  private String resultColourWritten;

  private String notes;

  private String lot;

  private String supplier;

  @Column(name = "controller_version")
  private String controllerVersion;

  protected WorkColumns() {}

  static WorkColumns of(Work work) {
    WorkColumns columns = new WorkColumns();
    columns.process = work.process();
    columns.material = work.word(WorkProperty.MATERIAL).slug();
    columns.materialWritten = work.word(WorkProperty.MATERIAL).written();
    columns.coating = work.word(WorkProperty.COATING).slug();
    columns.coatingWritten = work.word(WorkProperty.COATING).written();
    columns.colour = work.word(WorkProperty.COLOUR).slug();
    columns.colourWritten = work.word(WorkProperty.COLOUR).written();
    columns.thicknessMm = work.number(WorkProperty.THICKNESS);
    columns.resultColour = work.word(WorkProperty.RESULT_COLOUR).slug();
    columns.resultColourWritten = work.word(WorkProperty.RESULT_COLOUR).written();
    columns.notes = work.text(WorkProperty.NOTES);
    columns.lot = work.text(WorkProperty.LOT);
    columns.supplier = work.text(WorkProperty.SUPPLIER);
    columns.controllerVersion = work.text(WorkProperty.CONTROLLER_VERSION);
    return columns;
  }

  Work toWork() {
    return Work.of(process)
        .with(WorkProperty.MATERIAL, new Filed(material, materialWritten))
        .with(WorkProperty.COATING, new Filed(coating, coatingWritten))
        .with(WorkProperty.COLOUR, new Filed(colour, colourWritten))
        .with(WorkProperty.THICKNESS, thicknessMm)
        .with(WorkProperty.RESULT_COLOUR, new Filed(resultColour, resultColourWritten))
        .with(WorkProperty.NOTES, notes)
        .with(WorkProperty.LOT, lot)
        .with(WorkProperty.SUPPLIER, supplier)
        .with(WorkProperty.CONTROLLER_VERSION, controllerVersion);
  }

  Process process() {
    return process;
  }
}
