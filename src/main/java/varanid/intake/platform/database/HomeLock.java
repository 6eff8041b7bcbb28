package varanid.intake.platform.database;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.EnumSet;
import org.jspecify.annotations.Nullable;
import varanid.intake.platform.start.CannotStart;
import varanid.intake.platform.start.HomeFolder;

/**
 * The right to use the home folder, held by one process at a time. A lock of the operating system: it goes with the
 * process, however that ends.
 */
final class HomeLock implements AutoCloseable {

    /** We lock one byte far behind the text, because on Windows a locked byte cannot be read by others. */
    private static final long LOCKED_BYTE = Long.MAX_VALUE - 1;

    private final FileChannel channel;

    private HomeLock(FileChannel channel) {
        this.channel = channel;
    }

    /**
     * Takes the lock.
     *
     * @throws CannotStart where another process has it
     */
    static HomeLock take(HomeFolder home) throws IOException {
        Path file = home.resolve("lock");
        FileChannel channel = FileChannel.open(
                file,
                EnumSet.of(StandardOpenOption.CREATE, StandardOpenOption.READ, StandardOpenOption.WRITE),
                HomeFolder.ownerOnly("rw-------"));
        boolean taken = false;
        try {
            if (tryLock(channel) == null) {
                throw alreadyRunning(home, readHolder(channel));
            }
            writeHolder(channel, ProcessHandle.current().pid());
            taken = true;
            return new HomeLock(channel);
        } finally {
            if (!taken) {
                channel.close();
            }
        }
    }

    private static @Nullable FileLock tryLock(FileChannel channel) throws IOException {
        try {
            return channel.tryLock(LOCKED_BYTE, 1, false);
        } catch (OverlappingFileLockException e) {
            return null;
        }
    }

    private static CannotStart alreadyRunning(HomeFolder home, String holder) {
        String who = holder.isBlank() ? "" : " (process %s)".formatted(holder.strip());
        return new CannotStart(
                "Varanid Intake is already running on the folder %s%s.".formatted(home, who),
                "Stop it first, or choose another folder with VARANID_INTAKE_HOME.");
    }

    private static String readHolder(FileChannel channel) throws IOException {
        ByteBuffer text = ByteBuffer.allocate(20);
        channel.read(text, 0);
        return StandardCharsets.US_ASCII.decode(text.flip()).toString();
    }

    private static void writeHolder(FileChannel channel, long processId) throws IOException {
        channel.truncate(0);
        channel.write(StandardCharsets.US_ASCII.encode(Long.toString(processId)), 0);
    }

    @Override
    public void close() throws IOException {
        channel.close();
    }
}
