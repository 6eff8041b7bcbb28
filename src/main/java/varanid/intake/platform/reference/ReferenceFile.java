package varanid.intake.platform.reference;

import java.io.IOException;
import java.io.InputStream;
import java.util.Map;
import org.jspecify.annotations.Nullable;

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

    /**
     * What a file has under a code.
     *
     * @param path the file, for whoever has to mend it
     * @param where the part of it that {@code all} is
     * @throws IllegalStateException where it has nothing under that code
     */
    public static <T> T get(String path, Map<String, T> all, String where, String code) {
        @Nullable T found = all.get(code);
        if (found == null) {
            throw new IllegalStateException(path + " has no " + code + " in " + where);
        }
        return found;
    }
}
