package org.geneticsrules.pedigree;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.geneticsrules.evidence.Grade;
import org.geneticsrules.model.Model;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.vocabulary.Meaning;
import org.geneticsrules.vocabulary.Occasion;
import org.geneticsrules.vocabulary.Vocabulary;

/**
 * A pedigree whose names have been read: what each animal was called, by whose words, and what that says of its look.
 *
 * <pre>{@code
 * NamedRecords read = NamedRecords.of(pedigree, vocabularies);
 * RecordedAnswers kennel = RecordedAnswers.of(answers, read);
 * }</pre>
 *
 * <p>A name becomes one more {@link Observation}: that the animal showed one of the looks that the name covers, at the stage and in the
 * light in which it was said. So a name is evidence like a look, for what it says and no more: of the traits that it speaks of, in any
 * sense that it may have had on the day. A name that says nothing - said too early, of the wrong sex or season - stays a record and is no
 * evidence; {@link Reading#notices} tells why.
 *
 * <p>Immutable and thread-safe.
 */
public final class NamedRecords {

    private final Pedigree stated;
    private final Pedigree pedigree;
    private final ImmutableMap<String, ImmutableList<Reading>> readings;

    /**
     * What one name says of one animal.
     *
     * @param individual id of the animal
     * @param index position of the name among those of the animal, from 0
     * @param name the name, as written
     * @param whose whose name it is, in words: the region of the vocabulary, or else its id
     * @param looks the looks that it covers, of which the animal had one; empty if the name says nothing
     * @param notices what is weak about it, or why it says nothing
     * @param grade how well it is supported that people mean this: the weakest grade of the senses it may have
     */
    public record Reading(
            String individual,
            int index,
            CalledName name,
            String whose,
            Optional<Set<Phenotype>> looks,
            List<String> notices,
            Grade grade) {

        /**
         * Copies the looks and the notices.
         *
         * @param individual id of the animal
         * @param index position of the name
         * @param name the name
         * @param whose whose name it is
         * @param looks the looks that it covers
         * @param notices what is weak about it
         * @param grade how well it is supported
         */
        public Reading {
            looks = looks.map(ImmutableSet::copyOf);
            notices = ImmutableList.copyOf(notices);
        }
    }

    private NamedRecords(Pedigree stated, Pedigree pedigree, Map<String, ImmutableList<Reading>> readings) {
        this.stated = stated;
        this.pedigree = pedigree;
        this.readings = ImmutableMap.copyOf(readings);
    }

    /**
     * Reads the names of a pedigree.
     *
     * @param pedigree recorded animals
     * @param vocabularies the vocabularies at hand
     * @return the animals with what their names say
     * @throws ProblemsException with all that is wrong with any name: its vocabulary or the name itself is unknown, with the nearest known;
     *     it was not in use on the day; it is said of several things and the facet is not stated; it covers more looks than a record can
     *     list; season or light are unknown; or the vocabulary speaks of another catalogue than the pedigree
     */
    public static NamedRecords of(Pedigree pedigree, Collection<Vocabulary> vocabularies) {
        return of(pedigree, vocabularies, List.of());
    }

    /**
     * Reads the names of a pedigree, and compares all that is recorded with a model.
     *
     * @param pedigree recorded animals
     * @param vocabularies the vocabularies at hand, on the catalogue of the model
     * @param model the model that is to know all traits, loci, alleles and populations named
     * @return the animals with what their names say
     * @throws ProblemsException with all that is wrong with any name, and all that the model does not know
     */
    public static NamedRecords of(Pedigree pedigree, Collection<Vocabulary> vocabularies, Model model) {
        return of(pedigree, vocabularies, pedigree.problemsUnder(model));
    }

    private static NamedRecords of(
            Pedigree pedigree, Collection<Vocabulary> vocabularies, Collection<Problem> already) {
        Reader reader = new Reader(pedigree, vocabularies);
        PedigreeBuilder builder = Pedigree.builder(pedigree.id(), pedigree.version());
        builder.title = pedigree.title();
        builder.catalogue = pedigree.catalogue();
        Map<String, ImmutableList<Reading>> readings = new LinkedHashMap<>();
        for (Individual one : pedigree.individuals().values()) {
            ImmutableList<Reading> read = reader.read(one);
            if (!read.isEmpty()) {
                readings.put(one.id(), read);
            }
            builder.add(read(one, read));
        }
        List<Problem> problems = new ArrayList<>(already);
        problems.addAll(reader.problems.list());
        if (!problems.isEmpty()) {
            throw new ProblemsException(problems);
        }
        if (readings.isEmpty()) {
            return new NamedRecords(pedigree, pedigree, readings);
        }
        pedigree.litters().values().forEach(builder::add);
        return new NamedRecords(pedigree, builder.build(), readings);
    }

    /** The animal with what was seen of it and what it was called, whatever was read from its names before. */
    private static Individual read(Individual one, List<Reading> readings) {
        Individual read = one.withoutReadNames();
        for (Reading reading : readings) {
            if (reading.looks().isPresent()) {
                read = read.with(
                        Observation.read(reading.name(), reading.looks().get()));
            }
        }
        return read;
    }

    /**
     * Returns the pedigree as it was recorded.
     *
     * @return the pedigree whose names were read
     */
    public Pedigree stated() {
        return stated;
    }

    /**
     * Returns the pedigree in which each name that says something is an observation too, after what was seen. It is for engines: it has no
     * trail of corrections, and its document is that of the names, not of what they were taken to say.
     *
     * @return the pedigree with names as looks
     */
    public Pedigree pedigree() {
        return pedigree;
    }

    /**
     * Returns what the names of an animal say.
     *
     * @param individual id of an animal
     * @return one reading for each of its names, in the order recorded
     */
    public List<Reading> of(String individual) {
        return readings.getOrDefault(individual, ImmutableList.of());
    }

    /**
     * Returns what all names say.
     *
     * @return readings, animal by animal
     */
    public List<Reading> readings() {
        return readings.values().stream().flatMap(List::stream).collect(ImmutableList.toImmutableList());
    }

    /** Reads name by name, and notes all that is wrong. */
    private static final class Reader {

        private final Pedigree pedigree;
        private final List<Vocabulary> vocabularies;
        private final Problems problems = new Problems(Stage.REFERENCES);

        /** What was made of the same name, said of another animal of that sex. */
        private final Map<Said, Found> before = new LinkedHashMap<>();

        private record Said(CalledName name, Occasion occasion) {}

        private record Found(Optional<Set<Phenotype>> looks, Vocabulary by, List<String> notices, Grade grade) {}

        Reader(Pedigree pedigree, Collection<Vocabulary> vocabularies) {
            this.pedigree = pedigree;
            this.vocabularies = new ArrayList<>(new LinkedHashSet<>(vocabularies));
        }

        ImmutableList<Reading> read(Individual one) {
            ImmutableList.Builder<Reading> readings = ImmutableList.builder();
            for (int i = 0; i < one.names().size(); i++) {
                CalledName name = one.names().get(i);
                int index = i;
                found(one, name, PedigreeChecks.pointer(one) + Pointer.of("names", Integer.toString(i)))
                        .ifPresent(found -> readings.add(new Reading(
                                one.id(),
                                index,
                                name,
                                found.by().region().orElse(found.by().id()),
                                found.looks(),
                                found.notices(),
                                found.grade())));
            }
            return readings.build();
        }

        private Optional<Found> found(Individual one, CalledName name, String pointer) {
            Occasion occasion = new Occasion(name.stage(), one.sex(), name.date());
            Said said = new Said(name, occasion);
            Found known = before.get(said);
            if (known != null) {
                return Optional.of(known);
            }
            Optional<Vocabulary> vocabulary = vocabulary(name, pointer);
            Optional<Found> found = vocabulary.flatMap(by -> meaning(by, name, occasion, pointer));
            found.ifPresent(meant -> before.put(said, meant));
            return found;
        }

        private Optional<Vocabulary> vocabulary(CalledName name, String pointer) {
            String written = name.vocabulary();
            List<Vocabulary> found =
                    vocabularies.stream().filter(one -> isCalled(one, written)).toList();
            if (found.size() > 1 && pedigree.catalogue().isPresent()) {
                found = found.stream()
                        .filter(one ->
                                pedigree.catalogue().get().means(one.catalogue().reference()))
                        .toList();
            }
            String at = pointer + "/vocabulary";
            if (found.isEmpty()) {
                Set<String> known = new LinkedHashSet<>();
                vocabularies.forEach(one -> one.region().ifPresent(known::add));
                vocabularies.forEach(one -> known.add(one.id()));
                problems.unknown("unknown-vocabulary", at, "vocabulary", written, known);
                return Optional.empty();
            }
            if (found.size() > 1) {
                problems.add(
                        "several-vocabularies",
                        at,
                        "\"" + written + "\" may be any of "
                                + found.stream().map(Vocabulary::toString).collect(Collectors.joining(", ")),
                        "the id of one, and only one of its versions at hand");
                return Optional.empty();
            }
            Vocabulary one = found.get(0);
            if (pedigree.catalogue()
                    .filter(stated -> !stated.means(one.catalogue().reference()))
                    .isPresent()) {
                problems.add(
                        "other-catalogue",
                        at,
                        "vocabulary " + one + " speaks of catalogue " + one.catalogue() + ", the records of "
                                + pedigree.catalogue().get(),
                        "a vocabulary of the catalogue of the records");
                return Optional.empty();
            }
            return Optional.of(one);
        }

        private static boolean isCalled(Vocabulary one, String written) {
            return one.id().equals(written)
                    || one.id().endsWith("." + written)
                    || one.region().filter(written::equalsIgnoreCase).isPresent();
        }

        private Optional<Found> meaning(Vocabulary by, CalledName name, Occasion occasion, String pointer) {
            int before = problems.list().size();
            name.light()
                    .filter(light -> !by.catalogue().lights().contains(light))
                    .ifPresent(light -> problems.unknown(
                            "unknown-light",
                            pointer + "/light",
                            "light",
                            light,
                            by.catalogue().lights()));
            try {
                Meaning meaning = name.facet()
                        .map(facet -> Meaning.of(by, facet, name.word(), occasion))
                        .orElseGet(() -> Meaning.of(by, name.word(), occasion));
                Grade grade = meaning.readings().stream()
                        .map(one -> by.grade(one.name(), one.sense()))
                        .reduce(Grade::weaker)
                        .orElse(Grade.CONJECTURE);
                Found found = new Found(meaning.evidence(), by, meaning.weaknesses(), grade);
                return problems.list().size() > before ? Optional.empty() : Optional.of(found);
            } catch (ProblemsException e) {
                e.problems().forEach(problem -> problems.add(problem.pointing(pointer + place(problem))));
            } catch (TooLargeException e) {
                problems.add(
                        "too-many-looks",
                        pointer + "/word",
                        String.format(
                                Locale.ROOT,
                                "\"%s\" covers about %.0f looks, more than the %.0f that a record may list",
                                name.word(),
                                e.estimate(),
                                e.limit()),
                        "a name that says more, or what was seen, as looks");
            }
            return Optional.empty();
        }

        private static String place(Problem problem) {
            return switch (problem.code()) {
                case "unknown-facet", "several-facets" -> "/facet";
                case "unknown-season" -> "/stage/season";
                case "not-in-use" -> "/date";
                default -> "/word";
            };
        }
    }
}
