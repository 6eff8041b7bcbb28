package varanid.intake.attachment;

import java.util.UUID;
import java.util.function.UnaryOperator;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Service;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.FileRequest;
import varanid.intake.platform.web.FileUpload;
import varanid.intake.platform.web.JsonRequest;
import varanid.intake.platform.web.Once;
import varanid.intake.platform.web.ProblemException;
import varanid.intake.platform.web.Reply;

/** Adds and withdraws attachments on request, each once. */
@Service
public class AttachmentKeeper {

    private final Attachments attachments;
    private final Once once;

    AttachmentKeeper(Attachments attachments, Once once) {
        this.attachments = attachments;
        this.once = once;
    }

    /**
     * Receives a file and keeps it.
     *
     * @param asSent what the request is taken for, such as one without the fields that only a page sends
     * @return 201 with the attachment
     * @throws ProblemException 403 for who is neither keeper nor clinician, 404 where the organisation has no such animal,
     *     409 where it has as many as it can have, 422 with every fault of the request
     */
    public ResponseEntity<byte[]> add(
            Caller caller, UUID animalId, FileUpload upload, UnaryOperator<FileRequest> asSent) {
        caller.requireKeeperOrClinician();
        attachments.requireAnimal(caller, animalId);
        return upload.receive(sent -> {
            FileRequest request = asSent.apply(sent);
            NewAttachment attachment = attachments.read(caller, animalId, request);
            return once.perform(caller, request, () -> {
                KeptAttachment kept = attachments.keep(caller, animalId, attachment);
                return Reply.created(AttachmentController.path(animalId, kept.id()), null, AttachmentView.of(kept));
            });
        });
    }

    /**
     * Withdraws one, for the reason that the request says.
     *
     * @return 200 with the attachment
     * @throws ProblemException 403 for who is neither keeper nor clinician, 404 where the animal has none such, 409 where
     *     it was withdrawn already, 422 where no reason is given
     */
    public ResponseEntity<byte[]> withdraw(Caller caller, UUID animalId, UUID id, JsonRequest request) {
        caller.requireKeeperOrClinician();
        attachments.get(caller, animalId, id);
        String reason = request.read(fields -> fields.prose("reason", 500).required()::get);
        return once.perform(
                caller, request, () -> Reply.ok(AttachmentView.of(attachments.withdraw(caller, animalId, id, reason))));
    }
}
