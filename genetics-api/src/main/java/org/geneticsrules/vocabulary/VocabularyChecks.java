package org.geneticsrules.vocabulary;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.regex.Pattern;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.trait.BoxSet;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.PlainWords;
import org.geneticsrules.trait.Sex;

/** Finds all that is wrong with a vocabulary, stage by stage. Stateless and thread-safe. */
final class VocabularyChecks {

    /** RFC 5646, without looking the parts up. The schema has the same pattern. */
    private static final Pattern LANGUAGE = Pattern.compile("[A-Za-z]{2,8}(-[A-Za-z0-9]{1,8})*");

    private VocabularyChecks() {}

    /** How ids and names are spelt. */
    static void shape(VocabularyBuilder vocabulary, Problems problems) {
        if (vocabulary.id.isBlank() || vocabulary.version.isBlank()) {
            problems.add(
                    "blank-id",
                    "",
                    "the vocabulary has a blank id or version",
                    "an id such as example.names and a version");
        }
        vocabulary
                .language
                .filter(tag -> !LANGUAGE.matcher(tag).matches())
                .ifPresent(tag -> problems.add(
                        "bad-language",
                        "/language",
                        "\"" + tag + "\" is no language tag",
                        "a tag of BCP 47, such as en or pt-BR"));
        vocabulary
                .evidence
                .keySet()
                .forEach(id -> PlainWords.check(id, "piece of evidence", Pointer.of("evidence", id), problems));
        vocabulary.facets.keySet().forEach(id -> PlainWords.check(id, "facet", Pointer.of("facets", id), problems));
        for (Name name : vocabulary.names.values()) {
            word(name.word(), pointer(name), problems);
            for (int i = 0; i < name.synonyms().size(); i++) {
                word(name.synonyms().get(i), synonym(name, i), problems);
            }
        }
        each(vocabulary, (name, sense) -> {
            String at = pointer(name, sense);
            PlainWords.check(sense.id(), "sense", at, problems);
            sense.looks()
                    .keySet()
                    .forEach(look -> PlainWords.check(look, "look", at + Pointer.of("looks", look), problems));
        });
    }

    private static void word(String word, String pointer, Problems problems) {
        if (!Words.isWord(word)) {
            problems.add("bad-word", pointer, "\"" + word + "\" cannot be said of an animal", Words.EXPECTED);
        }
    }

    /** What names, senses and looks refer to. */
    static void references(VocabularyBuilder vocabulary, TraitSpace space, Problems problems) {
        vocabulary
                .catalogueReference
                .filter(reference -> !reference.means(vocabulary.catalogue.reference()))
                .ifPresent(reference -> problems.add(
                        "other-catalogue",
                        "/catalogue",
                        "the vocabulary was written for catalogue " + reference + ", but was given "
                                + vocabulary.catalogue.reference()));
        for (Name name : vocabulary.names.values()) {
            if (!vocabulary.facets.containsKey(name.facet())) {
                problems.unknown(
                        "unknown-facet", pointer(name) + "/facet", "facet", name.facet(), vocabulary.facets.keySet());
            }
            support(vocabulary, name.evidence(), pointer(name), problems);
        }
        each(vocabulary, (name, sense) -> {
            String at = pointer(name, sense);
            support(vocabulary, sense.evidence(), at, problems);
            sense.looks().forEach((id, look) -> look(look, at + Pointer.of("looks", id), space, problems));
        });
    }

    private static void support(
            VocabularyBuilder vocabulary, Optional<String> evidence, String pointer, Problems problems) {
        evidence.filter(id -> !vocabulary.evidence.containsKey(id))
                .ifPresent(id -> problems.unknown(
                        "unknown-evidence", pointer + "/evidence", "evidence", id, vocabulary.evidence.keySet()));
    }

    private static void look(Condition look, String pointer, TraitSpace space, Problems problems) {
        look.variables().forEach((variable, allowed) -> {
            String at = pointer + Pointer.of(variable);
            Optional<List<String>> values = space.values(variable);
            if (values.isEmpty()) {
                problems.unknown("unknown-trait", at, "trait", variable, space.boxes.names());
                return;
            }
            boolean circumstance = variable.equals(Sex.VARIABLE) || variable.equals(LifeStage.SEASON);
            allowed.values().stream()
                    .filter(value -> !values.get().contains(value))
                    .forEach(value -> problems.unknown(
                            circumstance ? "unknown-" + variable : "unknown-state",
                            at,
                            circumstance ? variable : "state of " + variable,
                            value,
                            values.get()));
            if (values.get().containsAll(allowed.values())
                    && allowed.among(values.get()).isEmpty()) {
                problems.add(
                        "empty-condition",
                        at,
                        "the look allows no value of " + variable + ", so no animal can have it",
                        "at least one value");
            }
        });
    }

    /** What the parts say together. */
    static void meaning(
            VocabularyBuilder vocabulary,
            TraitSpace space,
            IdentityHashMap<Sense, BoxSet> meanings,
            Problems problems) {
        for (Name name : vocabulary.names.values()) {
            if (name.senses().isEmpty()) {
                problems.add(
                        "no-senses", pointer(name), "\"" + name + "\" has no sense, so it means nothing", "a sense");
            }
        }
        each(vocabulary, (name, sense) -> {
            String at = pointer(name, sense);
            if (sense.looks().isEmpty()) {
                problems.add("no-looks", at, "\"" + name + "\" in this sense has no looks", "at least one look");
            } else if (space.boxes
                    .everything()
                    .minus(Objects.requireNonNull(meanings.get(sense)))
                    .isEmpty()) {
                problems.add(
                        "excludes-nothing",
                        at,
                        "every animal could be called \"" + name + "\" in this sense",
                        "looks that some animal does not have");
            }
            if (sense.period().isEmpty()) {
                problems.add(
                        "empty-period",
                        at + "/to",
                        "the time of use, " + sense.period() + ", ends before it begins",
                        "a date not before the first");
            }
        });
        sameWords(vocabulary, problems);
    }

    /** A word, and the name for which it stands. */
    private record Stated(String pointer, String word, Name name) {}

    private static void sameWords(VocabularyBuilder vocabulary, Problems problems) {
        Map<String, List<Stated>> seen = new LinkedHashMap<>();
        for (Name name : vocabulary.names.values()) {
            for (int i = 0; i < name.words().size(); i++) {
                String word = name.words().get(i);
                Stated stated = new Stated(i == 0 ? pointer(name) : synonym(name, i - 1), word, name);
                List<Stated> alike =
                        seen.computeIfAbsent(name.facet() + "\n" + Words.folded(word), key -> new ArrayList<>());
                alike.stream()
                        .filter(other -> other.name.equals(name) || overlap(other.name, name))
                        .findFirst()
                        .ifPresent(other -> problems.add(
                                "same-word",
                                stated.pointer,
                                "\"" + word + "\" is the same word as \"" + other.word + "\", which stands for \""
                                        + other.name + "\" in the same facet at the same time",
                                "words of which each means one name"));
                alike.add(stated);
            }
        }
    }

    private static boolean overlap(Name one, Name other) {
        return one.senses().values().stream()
                .anyMatch(mine -> other.senses().values().stream()
                        .anyMatch(theirs -> mine.period().overlaps(theirs.period())));
    }

    private static void each(VocabularyBuilder vocabulary, BiConsumer<Name, Sense> check) {
        vocabulary.names.values().forEach(name -> name.senses().values().forEach(sense -> check.accept(name, sense)));
    }

    private static String pointer(Name name) {
        return Pointer.of("names", name.word());
    }

    private static String pointer(Name name, Sense sense) {
        return Pointer.of("names", name.word(), "senses", sense.id());
    }

    private static String synonym(Name name, int index) {
        return Pointer.of("names", name.word(), "synonyms", Integer.toString(index));
    }
}
