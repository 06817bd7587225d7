package org.geneticsrules.examples;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.vocabulary.Meaning;
import org.geneticsrules.vocabulary.Occasion;
import org.geneticsrules.vocabulary.Vocabulary;
import picocli.CommandLine.Option;

/** The option that says what a name speaks of, for words that stand for several things. */
final class FacetOption {

    @Option(
            names = "--facet",
            paramLabel = "FACET",
            description = {
                "What is spoken of, such as colour or \"white marks\"; may be repeated.",
                "Default: whatever the name speaks of, if that is one thing."
            })
    private List<String> facets = new ArrayList<>();

    /** The meaning of a word, which must be a name of one of the facets if any is given. */
    Meaning meaning(Vocabulary vocabulary, String word, Occasion occasion) {
        try {
            return Meaning.of(vocabulary, facets, word, occasion);
        } catch (ProblemsException e) {
            List<Problem> ofFacets = having("unknown-facet", e.problems());
            if (!ofFacets.isEmpty()) {
                throw new InputException(ProblemText.of("--facet", String.join(", ", facets), ofFacets));
            }
            if (!having("several-facets", e.problems()).isEmpty()) {
                String options = vocabulary.find(word).stream()
                        .map(name -> "--facet \"" + name.facet() + "\"")
                        .distinct()
                        .collect(Collectors.joining(" or "));
                throw new InputException(ProblemText.of(e.problems()) + "Say which is meant by " + options + ".\n");
            }
            throw e;
        }
    }

    private static List<Problem> having(String code, List<Problem> problems) {
        return problems.stream().filter(problem -> problem.code().equals(code)).toList();
    }
}
