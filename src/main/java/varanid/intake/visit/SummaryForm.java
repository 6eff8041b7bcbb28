package varanid.intake.visit;

import java.net.URI;
import java.util.Optional;
import org.springframework.http.MediaType;

/** One way to write a summary down. */
interface SummaryForm {

    /** What a request asks for it by. */
    MediaType type();

    /**
     * The whole of it.
     *
     * @param link where the same can be opened without an account, if such a link was made
     */
    byte[] write(Summary summary, Optional<URI> link);
}
