package org.geneticsrules.answer.named;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.named.NameEvidence.OfSense;
import org.geneticsrules.caution.QuestionKind;
import org.geneticsrules.document.Reference;
import org.geneticsrules.model.Statement;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.BoxSpace;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.vocabulary.Conversion;
import org.geneticsrules.vocabulary.Match;
import org.geneticsrules.vocabulary.Meaning;
import org.geneticsrules.vocabulary.Name;
import org.geneticsrules.vocabulary.Naming;
import org.geneticsrules.vocabulary.Occasion;
import org.geneticsrules.vocabulary.PartialDate;
import org.geneticsrules.vocabulary.Sense;
import org.geneticsrules.vocabulary.Vocabulary;

/**
 * Answers questions about names, with cautions and evidence.
 *
 * <pre>{@code
 * NameAnswers names = NameAnswers.of(answers);
 * NamedAnswer answer = names.name(registry.vocabularies(catalogue), Phenotype.parse("hue: black, eye colour: dark"), Occasion.unstated());
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class NameAnswers {

    /** More names than this are not read through in a verdict. */
    private static final int MOST_NAMED = 8;

    private final Answers answers;

    private NameAnswers(Answers answers) {
        this.answers = answers;
    }

    /**
     * Answers with the cautions that belong to a model; its rules of inheritance are not used.
     *
     * @param answers the cautions to raise
     * @return the answering service
     */
    public static NameAnswers of(Answers answers) {
        return new NameAnswers(answers);
    }

    /**
     * Answers what an animal is called.
     *
     * @param vocabularies the vocabularies to ask
     * @param seen what was seen of it
     * @param occasion when it was seen, as far as known; without a date the names in use today are meant
     * @return the answer; its finding is a {@link NameFinding.Called}
     * @throws ProblemsException if a trait, state or season is unknown
     * @throws TooLargeException if the looks of a name are too many or too entangled
     */
    public NamedAnswer name(Collection<Vocabulary> vocabularies, Phenotype seen, Occasion occasion) {
        List<Naming> namings =
                vocabularies.stream().map(one -> Naming.of(one, seen, occasion)).toList();
        Map<String, OfSense> rests = new LinkedHashMap<>();
        Set<String> notices = new LinkedHashSet<>();
        List<String> verdicts = new ArrayList<>();
        for (Naming naming : namings) {
            notices.addAll(naming.notices());
            verdicts.add(where(naming.vocabulary()) + ": " + NamesInShort.of(naming));
            for (Naming.InFacet facet : naming.facets()) {
                facet.of(Naming.Standing.CERTAIN)
                        .forEach(one -> one.senses().keySet().stream()
                                .filter(one::applies)
                                .forEach(id -> rest(
                                        rests,
                                        naming.vocabulary(),
                                        one.name(),
                                        Objects.requireNonNull(
                                                one.name().senses().get(id)))));
            }
        }
        List<String> given = new ArrayList<>(List.of("look " + seen));
        given.addAll(said(occasion));
        return new NamedAnswer(
                "name",
                "What is an animal called that looks so?",
                verdicts.isEmpty() ? "There is no vocabulary to ask." : String.join("; ", verdicts) + ".",
                given,
                new NameFinding.Called(namings),
                answers.cautions(QuestionKind.NAME, look -> mayShow(seen, look)),
                NameEvidence.of(new ArrayList<>(rests.values())),
                vocabularies.stream().map(Vocabulary::reference).toList(),
                new ArrayList<>(notices));
    }

    /**
     * Answers what a name says of an animal.
     *
     * @param meaning what the name may mean on the occasion on which it was said
     * @return the answer; its finding is a {@link NameFinding.Meant}
     */
    public NamedAnswer meaning(Meaning meaning) {
        Vocabulary vocabulary = meaning.vocabulary();
        String word = meaning.word();
        Map<String, OfSense> rests = new LinkedHashMap<>();
        meaning.readings().forEach(one -> rest(rests, vocabulary, one.name(), one.sense()));
        int senses = meaning.readings().size();
        String verdict = quoted(word) + " in " + where(vocabulary)
                + (senses == 1
                        ? " has one sense, and says: "
                                + words(meaning.readings().get(0).sense())
                        : " has " + senses + " senses: "
                                + listed(meaning.readings().stream()
                                        .map(one -> quoted(one.sense().id()))
                                        .toList()))
                + ".";
        List<String> given = new ArrayList<>(List.of("name " + quoted(word)));
        given.addAll(said(meaning.occasion()));
        return new NamedAnswer(
                "meaning",
                "What does the name " + quoted(word) + " say of an animal?",
                verdict,
                given,
                new NameFinding.Meant(meaning),
                answers.cautions(QuestionKind.NAME, look -> mayShow(meaning, look)),
                NameEvidence.of(new ArrayList<>(rests.values())),
                List.of(vocabulary.reference()),
                meaning.notices());
    }

    /**
     * Answers what the names of an animal are in another vocabulary, or in the same at another time.
     *
     * @param names what the animal was called: one name, or the several that make up the name of the whole coat
     * @param target the vocabulary in which it is to be named
     * @param date the day, month or year in which; without one, today
     * @return the answer; its finding is a {@link NameFinding.Converted}
     * @throws ProblemsException if the vocabularies speak of other traits or facets, or no animal can have all the names
     * @throws TooLargeException if there are too many candidates
     * @throws IllegalArgumentException if there is no name
     */
    public NamedAnswer convert(List<Meaning> names, Vocabulary target, Optional<PartialDate> date) {
        Conversion found = Conversion.of(names, target, date);
        Map<String, OfSense> rests = new LinkedHashMap<>();
        Set<String> notices = new LinkedHashSet<>();
        Set<String> given = new LinkedHashSet<>();
        Set<Reference> vocabularies = new LinkedHashSet<>();
        for (Meaning meaning : names) {
            notices.addAll(meaning.notices());
            meaning.readings().forEach(one -> rest(rests, meaning.vocabulary(), one.name(), one.sense()));
            given.add("name " + quoted(meaning.word()) + " in " + where(meaning.vocabulary()));
            vocabularies.add(meaning.vocabulary().reference());
        }
        names.forEach(meaning -> given.addAll(said(meaning.occasion())));
        date.ifPresent(day -> given.add("to be named " + day.inWords()));
        vocabularies.add(target.reference());
        notices.addAll(found.notices());
        found.candidates()
                .forEach(candidate -> candidate
                        .names()
                        .forEach(name -> name.inUse(date).forEach(sense -> rest(rests, target, name, sense))));
        return new NamedAnswer(
                "conversion",
                "What is " + named(names.stream().map(Meaning::word).toList()) + " of "
                        + String.join(
                                " and ",
                                names.stream()
                                        .map(one -> where(one.vocabulary()))
                                        .distinct()
                                        .toList())
                        + " called in " + where(target) + "?",
                converted(found),
                new ArrayList<>(given),
                new NameFinding.Converted(found),
                answers.cautions(
                        QuestionKind.NAME,
                        look -> names.stream().allMatch(one -> meets(one, look))
                                && names.stream().anyMatch(one -> speaksOf(one, look))),
                NameEvidence.of(new ArrayList<>(rests.values())),
                new ArrayList<>(vocabularies),
                new ArrayList<>(notices));
    }

    private static String converted(Conversion found) {
        String said = named(found.names().stream().map(Meaning::word).toList());
        if (found.candidates().isEmpty()) {
            return "Nothing in " + where(found.target()) + " is called so: no name there covers any animal that is "
                    + said + ".";
        }
        List<String> exact = found.candidates().stream()
                .filter(one -> !one.isLossy())
                .map(NameAnswers::named)
                .toList();
        if (!exact.isEmpty()) {
            int more = exact.size() - MOST_NAMED;
            String same = String.join(" or ", exact.stream().limit(MOST_NAMED).toList());
            return said + " is " + same + (more > 0 ? " or any of " + more + " others" : "") + " in "
                    + where(found.target())
                    + ", and means exactly the same.";
        }
        Conversion.Candidate best = found.candidates().get(0);
        return "No name in " + where(found.target()) + " means exactly " + said + "; the nearest is " + named(best)
                + ", which " + shares(best.match()) + ", so that something is lost.";
    }

    private static String shares(Match match) {
        return switch (match) {
            case EXACT -> "means the same";
            case BROADER -> "means more";
            case NARROWER -> "means less";
            case OVERLAPPING -> "shares only a part of its meaning";
            case NONE -> "means something else";
        };
    }

    private static String named(Conversion.Candidate candidate) {
        return named(candidate.names().stream().map(Name::word).toList());
    }

    private static String named(List<String> words) {
        return String.join(" and ", words.stream().map(NameAnswers::quoted).toList());
    }

    /** As many as are read through, and how many more there are. */
    private static String listed(List<String> words) {
        int more = words.size() - MOST_NAMED;
        return String.join(", ", words.stream().limit(MOST_NAMED).toList())
                + (more > 0 ? " and " + more + " more" : "");
    }

    static String where(Vocabulary vocabulary) {
        return vocabulary.region().or(vocabulary::title).orElse(vocabulary.id());
    }

    static String quoted(String text) {
        return "\"" + text + "\"";
    }

    private static List<String> said(Occasion occasion) {
        List<String> said = new ArrayList<>();
        if (!occasion.stage().equals(LifeStage.unstated())) {
            said.add("stage " + occasion.stage());
        }
        occasion.sex().ifPresent(sex -> said.add(sex.word()));
        occasion.date().ifPresent(day -> said.add(day.inWords()));
        return said;
    }

    /** As in {@code dilution: sandy, eye colour: dark; or hue: reddish brown}. */
    private static String words(Sense sense) {
        return String.join(
                "; or ",
                sense.looks().values().stream().map(Condition::toString).toList());
    }

    private static void rest(Map<String, OfSense> rests, Vocabulary vocabulary, Name name, Sense sense) {
        String pointer = Pointer.of("names", name.word(), "senses", sense.id());
        rests.putIfAbsent(
                vocabulary.id() + pointer,
                new OfSense(
                        vocabulary.id(),
                        new Statement(
                                pointer,
                                quoted(name.word()) + ", sense " + quoted(sense.id()) + ", of " + vocabulary.id(),
                                vocabulary.support(name, sense))));
    }

    /** Whether an animal may show a look, if something of it was seen and nothing seen speaks against the rest. */
    private static boolean mayShow(Phenotype seen, Condition look) {
        return !Collections.disjoint(seen.traits(), look.names())
                && look.variables().entrySet().stream()
                        .allMatch(one -> seen.state(one.getKey())
                                .map(one.getValue()::allows)
                                .orElse(true));
    }

    /** Whether some animal of this name shows a look of which the name speaks, whenever it was said. */
    private static boolean mayShow(Meaning meaning, Condition look) {
        return speaksOf(meaning, look) && meets(meaning, look);
    }

    private static boolean speaksOf(Meaning meaning, Condition look) {
        return meaning.readings().stream()
                .flatMap(one -> one.sense().looks().values().stream())
                .anyMatch(one -> !Collections.disjoint(one.names(), look.names()));
    }

    private static boolean meets(Meaning meaning, Condition look) {
        BoxSpace space = meaning.vocabulary().space();
        return space.names().containsAll(look.names())
                && !meaning.set().and(space.ofDisjoint(List.of(look))).isEmpty();
    }
}
