package org.geneticsrules.answer.recorded;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.geneticsrules.answer.Assumption;
import org.geneticsrules.inference.Notice;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.Population;
import org.geneticsrules.trait.Confusions;
import org.geneticsrules.trait.Taxon;
import org.geneticsrules.trait.Trait;

/** What an answer about recorded animals takes for granted, each assumption once. */
final class Taken {

    private final Map<String, Assumption> made = new LinkedHashMap<>();
    private final Model model;
    private final Taxon.Young young;

    Taken(Model model, Taxon.Young young) {
        this.model = model;
        this.young = young;
    }

    /** What every question about records takes for granted. */
    Taken records(Set<String> loci, Confusions confusions, boolean weighted) {
        add(
                "model",
                "The rules of model " + model + " hold.",
                "Another model of the same traits may answer otherwise; \"impossible\" means impossible under this model.");
        add(
                "recorded-parents",
                "The recorded sires and dams are the parents.",
                "A wrong sire, a foster dam recorded as mother or two " + young.many()
                        + " exchanged change what follows for all their relatives.");
        add(
                "recorded-looks",
                confusions.equals(Confusions.none())
                        ? "What was seen and reported is recorded as it was."
                        : "What was seen is recorded as it was, save for errors of naming: " + words(confusions) + ".",
                "A single misnamed coat can exclude what is true; look again where much hangs on one record.");
        inheritance(loci, weighted);
        if (model.viability().isEmpty()) {
            add(
                    "equal-viability",
                    "All genotypes are equally likely to live until they are looked at.",
                    "If some " + young.many() + " die before they are seen, the others make up larger shares.");
        } else {
            add(
                    "viability",
                    "Every recorded animal is one of those that live, some being lost before as the model states.",
                    "With other losses the shares of the " + young.many() + " that are left change.");
        }
        return this;
    }

    private static String words(Confusions confusions) {
        return confusions.all().stream()
                .map(one -> one.trait() + " " + one.shown() + " is recorded as " + one.read()
                        + one.stage().map(stage -> " at " + stage).orElse("") + " with a chance of " + one.chance())
                .collect(Collectors.joining("; "));
    }

    private void inheritance(Set<String> loci, boolean weighted) {
        Set<String> matter = Bearings.together(model, loci);
        model.groups().values().stream()
                .filter(group -> group.loci().stream().filter(matter::contains).count() > 1)
                .forEach(group -> add(
                        "recombination-" + group.id().replace(' ', '-'),
                        "The loci " + String.join(", ", group.loci()) + " of group \"" + group.id()
                                + "\" recombine as the model states.",
                        "A closer or a wider interval gives other chances."));
        if (loci.stream().allMatch(locus -> model.locus(locus).mutation().isEmpty())) {
            add(
                    "no-new-mutation",
                    "No allele changes between parent and " + young.one() + ".",
                    "A new mutation can make possible what is impossible here, very rarely.");
            return;
        }
        add(
                "mutation-left-out",
                "What is called possible, excluded or contradictory is so without a new mutation.",
                "The model states mutation, which can make possible what is excluded, very rarely.");
        if (weighted) {
            add(
                    "mutation-counted",
                    "In chances, alleles change between parent and " + young.one() + " as often as the model states.",
                    "Rates of mutation are known roughly at best; small chances rest on them.");
        }
    }

    /** What chances take for granted. */
    Taken weighting(Collection<Population> populations, Collection<Origin> origins) {
        if (origins.isEmpty()) {
            return this;
        }
        origins.forEach(origin -> origin.assumed()
                .ifPresent(population -> add(
                        "population-" + population.id().replace(' ', '-'),
                        "Founders and unrecorded parents for whom no population is stated are as in population \""
                                + population.id() + "\""
                                + population
                                        .title()
                                        .map(title -> " (" + title + ")")
                                        .orElse("") + ".",
                        "Other frequencies give other chances; compare the populations listed.")));
        if (!populations.isEmpty()) {
            add(
                    "hardy-weinberg",
                    "Within a population, genotypes stand in Hardy-Weinberg proportions, and alleles of different loci are"
                            + " combined at random.",
                    "Animals mated by coat are not in these proportions; carriers may be more or less common.");
        }
        return add(
                "unrelated-founders",
                "Founders and unrecorded parents are unrelated to one another and not inbred.",
                "Relatives share hidden alleles, which makes recessive looks among their young more likely.");
    }

    /** Looks that do not state when, or in which light, they were made. */
    Taken told(Collection<Notice> notices) {
        Set<Trait> lit = new LinkedHashSet<>();
        for (Notice notice : notices) {
            if (notice.kind() == Notice.Kind.TAKEN_AS_JUDGEABLE) {
                add(
                        "told-in-time-" + notice.trait().replace(' ', '-'),
                        "\"" + notice.trait() + "\" was looked at late enough to be told, where no stage is recorded.",
                        "What is read of it earlier is no evidence; record the age or the moult with it.");
            } else if (notice.kind() == Notice.Kind.TAKEN_AS_LIT) {
                model.catalogue().trait(notice.trait()).ifPresent(lit::add);
            }
        }
        if (!lit.isEmpty()) {
            add(Assumption.ofLight(lit));
        }
        return this;
    }

    Taken add(String id, String text, String otherwise) {
        return add(new Assumption(id, text, otherwise));
    }

    Taken add(Assumption one) {
        made.putIfAbsent(one.id(), one);
        return this;
    }

    List<Assumption> list() {
        return new ArrayList<>(made.values());
    }
}
