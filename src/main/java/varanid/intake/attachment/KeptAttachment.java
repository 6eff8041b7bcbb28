package varanid.intake.attachment;

import java.time.Instant;
import java.util.Optional;
import java.util.UUID;

/**
 * A photograph or a laboratory report, without its bytes.
 *
 * @param assessmentId the look that it belongs to
 * @param sampleId the sample that it belongs to; of an animal alone neither is there
 * @param finding the id of the look's finding that it shows
 * @param caption in the words of whoever added it
 * @param takenAt when the picture was taken or the report made; nobody said where it is empty
 * @param content what it is
 */
public record KeptAttachment(
        UUID id,
        UUID animalId,
        Optional<UUID> assessmentId,
        Optional<UUID> sampleId,
        Optional<String> finding,
        Optional<String> caption,
        Optional<Instant> takenAt,
        UUID recordedBy,
        Instant recordedAt,
        Content content,
        Optional<Withdrawal> withdrawal) {

    /**
     * What it is.
     *
     * @param mediaType {@code image/jpeg} or {@code application/pdf}
     * @param bytes how large
     * @param sha256 as 64 lower-case hexadecimal digits
     * @param width of a picture, in pixels
     * @param height of a picture
     * @param pages of a report
     */
    public record Content(
            String mediaType,
            int bytes,
            String sha256,
            Optional<Integer> width,
            Optional<Integer> height,
            Optional<Integer> pages) {

        /** What each side of the small picture is of that of the whole, at most 1. */
        public double thumbnailScale() {
            int longest = Math.max(width.orElse(1), height.orElse(1));
            return Math.min(1, (double) Picture.THUMBNAIL / longest);
        }

        public boolean isPicture() {
            return mediaType.equals("image/jpeg");
        }
    }

    /** From when on it is shown no more, and why. */
    public record Withdrawal(Instant at, UUID by, String reason) {}
}
