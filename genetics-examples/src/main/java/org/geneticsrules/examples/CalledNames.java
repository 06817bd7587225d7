package org.geneticsrules.examples;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.geneticsrules.answer.Animal;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.CalledName;
import org.geneticsrules.pedigree.NamedRecords;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sighting;
import org.geneticsrules.vocabulary.Vocabulary;

/** Reads names that an animal was called by from the texts of options. Stateless and thread-safe. */
final class CalledNames {

    private static final String FORM = "NAME in VOCABULARY, such as \"sandy in British Isles on 1998-11-02 @ moult 2\"";

    private static final Pattern TEXT =
            Pattern.compile("(?:([^:]+):)?\\s*(.+)\\s+in\\s+(.+?)(?:\\s+on\\s+([0-9]\\S*))?", Pattern.DOTALL);

    /** Where its number stands in the pointer of a name, as in {@code /individuals/Juniper/names/0}. */
    private static final int NUMBER = 3;

    private CalledNames() {}

    /** Names of one animal; what is wrong with any of them is told at once. */
    static List<CalledName> all(String option, Model model, List<String> given) {
        List<CalledName> names = new ArrayList<>();
        StringBuilder wrong = new StringBuilder();
        for (String one : given) {
            try {
                names.add(read(option, model, one));
            } catch (InputException e) {
                wrong.append(e.text());
            }
        }
        if (wrong.length() > 0) {
            throw new InputException(wrong.toString());
        }
        return names;
    }

    /** Reads the names of the only animal of a pedigree, which were given in this order; what is wrong is told of the text given. */
    static NamedRecords read(String option, List<String> given, Pedigree alone, List<Vocabulary> vocabularies) {
        try {
            return NamedRecords.of(alone, vocabularies);
        } catch (ProblemsException e) {
            StringBuilder wrong = new StringBuilder();
            for (Problem problem : e.problems()) {
                List<String> place = Pointer.names(problem.pointer());
                String text = given.get(Integer.parseInt(place.get(NUMBER)));
                wrong.append(ProblemText.of(option, text, List.of(problem.pointing(""))));
            }
            throw new InputException(wrong.toString());
        }
    }

    /** An animal that was called by names; what is wrong with any of them is told at once. */
    static Animal called(String option, List<String> given, Animal animal, Model model, List<Vocabulary> vocabularies) {
        Animal called = animal;
        StringBuilder wrong = new StringBuilder();
        for (String one : given) {
            try {
                CalledName name = read(option, model, one);
                Animal before = called;
                called = Inputs.reading(option, one, () -> before.called(name, vocabularies));
            } catch (InputException e) {
                wrong.append(e.text());
            }
        }
        if (wrong.length() > 0) {
            throw new InputException(wrong.toString());
        }
        return called;
    }

    /** A name, whose it is, and, as far as stated, when it was said, and at which stage and in which light after an at sign. */
    static CalledName read(String option, Model model, String given) {
        int at = given.lastIndexOf('@');
        Matcher parts = TEXT.matcher((at < 0 ? given : given.substring(0, at)).strip());
        if (!parts.matches()) {
            throw new InputException(ProblemText.of(
                    option,
                    given,
                    List.of(Problem.of(Stage.SYNTAX, "name-syntax", "", "this does not say who calls it what")
                            .expecting(FORM))));
        }
        return Inputs.reading(option, given, () -> name(option, model, given, at, parts));
    }

    private static CalledName name(String option, Model model, String given, int at, Matcher parts) {
        CalledName name = CalledName.of(parts.group(2).strip(), parts.group(3).strip());
        if (parts.group(1) != null) {
            name = name.ofFacet(parts.group(1).strip());
        }
        if (parts.group(4) != null) {
            name = name.on(VocabularyOptions.date(option, parts.group(4)).orElseThrow());
        }
        if (at >= 0) {
            Sighting occasion = Inputs.occasion(model, given.substring(at + 1), Phenotype.unspecified());
            name = name.at(occasion.stage());
            name = occasion.light().map(name::in).orElse(name);
        }
        return name;
    }
}
