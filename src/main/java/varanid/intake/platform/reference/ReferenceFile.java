package varanid.intake.platform.reference;

import java.io.IOException;
import java.io.InputStream;

/** A file of rules or words that is part of the program. */
public final class ReferenceFile {

    private ReferenceFile() {}

    /** Turns the file into what is wanted of it. */
    @FunctionalInterface
    public interface Reading<T> {
        T read(InputStream file) throws IOException;
    }

    /**
     * Reads a file.
     *
     * @param path on the class path, such as {@code /shared/reference/species.yaml}
     * @throws IllegalStateException where it is missing or cannot be read
     */
    public static <T> T read(String path, Reading<T> reading) {
        try (InputStream file = ReferenceFile.class.getResourceAsStream(path)) {
            if (file == null) {
                throw new IllegalStateException("missing from the program: " + path);
            }
            return reading.read(file);
        } catch (IOException e) {
            throw new IllegalStateException("cannot be read: " + path, e);
        }
    }
}
