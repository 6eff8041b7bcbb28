package varanid.intake.platform.web;

import jakarta.servlet.RequestDispatcher;
import jakarta.servlet.http.HttpServletRequest;
import org.springframework.boot.webmvc.error.ErrorController;
import org.springframework.http.HttpStatusCode;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;

/** Makes a problem of what the container would make a page of. */
@RestController
class LastResort implements ErrorController {

    private final ProblemWriter writer;

    LastResort(ProblemWriter writer) {
        this.writer = writer;
    }

    @RequestMapping("/error")
    ResponseEntity<byte[]> error(HttpServletRequest request) {
        HttpStatusCode status = ProblemAdvice.statusOf(request.getAttribute(RequestDispatcher.ERROR_STATUS_CODE))
                .orElse(HttpStatusCode.valueOf(404));
        return writer.entity(ProblemAdvice.ofStatus(status), request);
    }
}
