package varanid.intake.attachment;

import org.jspecify.annotations.Nullable;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.ProblemType;

/**
 * A file as it may be kept.
 *
 * @param width of a picture
 * @param height of a picture
 * @param thumbnail of a picture
 * @param pages of a report
 */
record CheckedFile(
        String mediaType,
        byte[] content,
        @Nullable Integer width,
        @Nullable Integer height,
        byte @Nullable [] thumbnail,
        @Nullable Integer pages) {

    static final String JPEG = "image/jpeg";
    static final String PDF = "application/pdf";

    /**
     * @throws Refused where it is none of the kinds that are kept, or not fit to be
     * @throws ProblemException 413 where it is a picture that is too large
     */
    static CheckedFile of(byte[] file) throws Refused {
        FileKind kind = FileKind.of(file);
        if (kind == FileKind.PDF) {
            LaboratoryReport report = LaboratoryReport.read(file);
            return new CheckedFile(PDF, report.pdf(), null, null, null, report.pages());
        }
        if (file.length > Picture.LARGEST_FILE) {
            throw new ProblemException(
                    ProblemType.TOO_LARGE, "The picture is larger than " + Picture.LARGEST_FILE + " bytes.");
        }
        Picture picture = Picture.read(kind, file);
        return new CheckedFile(JPEG, picture.jpeg(), picture.width(), picture.height(), picture.thumbnail(), null);
    }
}
