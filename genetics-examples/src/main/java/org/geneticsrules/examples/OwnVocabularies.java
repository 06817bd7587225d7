package org.geneticsrules.examples;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.geneticsrules.json.Documents;
import org.geneticsrules.json.Source;
import org.geneticsrules.model.Model;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.vocabulary.Vocabulary;
import picocli.CommandLine.Option;

/** The vocabularies that names are read with: those of the plug-ins, and one's own. */
final class OwnVocabularies {

    @Option(
            names = "--own",
            paramLabel = "FILE",
            description = "A vocabulary of one's own, beside those of the plug-ins; may be repeated.")
    private List<Path> own = new ArrayList<>();

    /** All vocabularies about the traits of a model. */
    List<Vocabulary> all(Model model) {
        List<Vocabulary> known = new ArrayList<>(Shelf.open().vocabularies(model));
        for (Path path : own) {
            try {
                known.add(Documents.reader().readVocabulary(Source.of(path), List.of(model.catalogue())));
            } catch (ProblemsException e) {
                throw new InputException(ProblemText.of(path.toString(), e.problems()));
            }
        }
        return known;
    }
}
