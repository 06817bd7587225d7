package org.geneticsrules.examples;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.geneticsrules.answer.compared.Analysis;
import org.geneticsrules.json.DocumentKind;
import org.geneticsrules.json.DocumentReader;
import org.geneticsrules.json.Documents;
import org.geneticsrules.json.Source;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.spi.Renewal;
import org.geneticsrules.trait.Catalogue;

/** A model or a patch that is to be taken in place of a frozen one. Stateless and thread-safe. */
final class StatedVersion {

    private StatedVersion() {}

    /** The renewal with the model or patch stated: of a plug-in by its id, or from a file. */
    static Renewal with(String stated, Renewal renewal, Analysis analysis) {
        Shelf shelf = Shelf.open();
        if (!ModelChoice.isFile(stated)) {
            return shelf.patches().stream().anyMatch(patch -> patch.id().equals(stated))
                    ? renewal.with(shelf.patch(stated))
                    : renewal.with(shelf.model(stated));
        }
        Path path = Path.of(stated);
        DocumentReader reader = Documents.reader();
        try {
            return reader.kindOf(Source.of(path)) == DocumentKind.PATCH
                    ? renewal.with(reader.readPatch(Source.of(path)))
                    : renewal.with(reader.readModel(Source.of(path), catalogues(shelf, analysis)));
        } catch (ProblemsException e) {
            throw new InputException(ProblemText.of(stated, e.problems()));
        }
    }

    private static List<Catalogue> catalogues(Shelf shelf, Analysis analysis) {
        List<Catalogue> known = new ArrayList<>(shelf.catalogues());
        Stream.concat(Stream.of(analysis.model()), analysis.rivals().stream())
                .map(one -> one.base().catalogue())
                .forEach(known::add);
        return known;
    }
}
