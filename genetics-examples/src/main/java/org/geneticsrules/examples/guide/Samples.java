package org.geneticsrules.examples.guide;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/** All samples by name. Stateless and thread-safe. */
public final class Samples {

    private Samples() {}

    /**
     * Returns the samples.
     *
     * @return samples by the name of their class, in the order of the guide
     */
    public static Map<String, Sample> all() {
        Map<String, Sample> all = new LinkedHashMap<>();
        all.put("Embedding", Embedding::run);
        all.put("DominanceSeries", DominanceSeries::run);
        all.put("Cases", Cases::run);
        all.put("Masks", Masks::run);
        all.put("NotSeen", NotSeen::run);
        all.put("Linkage", Linkage::run);
        all.put("Crossovers", Crossovers::run);
        all.put("SexLinkage", SexLinkage::run);
        all.put("Fowl", Fowl::run);
        all.put("SexInfluence", SexInfluence::run);
        all.put("Mutations", Mutations::run);
        all.put("ViabilityStatements", ViabilityStatements::run);
        all.put("Penetrance", Penetrance::run);
        all.put("Expressivity", Expressivity::run);
        all.put("Thresholds", Thresholds::run);
        all.put("Whitening", Whitening::run);
        all.put("Seasons", Seasons::run);
        all.put("Complementation", Complementation::run);
        all.put("ComplementationTrap", ComplementationTrap::run);
        all.put("Litters", Litters::run);
        all.put("TestMatings", TestMatings::run);
        all.put("UncertainParents", UncertainParents::run);
        all.put("TwoSires", TwoSires::run);
        all.put("Relatives", Relatives::run);
        all.put("Recheck", Recheck::run);
        all.put("NextLook", NextLook::run);
        all.put("LaterLook", LaterLook::run);
        all.put("DnaTesting", DnaTesting::run);
        all.put("Notebook", Notebook::run);
        all.put("Asking", Asking::run);
        all.put("CountedNumbers", CountedNumbers::run);
        all.put("Estimates", Estimates::run);
        all.put("SilverLitters", SilverLitters::run);
        all.put("PaleLitters", PaleLitters::run);
        all.put("WhiteLitters", WhiteLitters::run);
        all.put("HiddenPale", HiddenPale::run);
        all.put("NoticedLitters", NoticedLitters::run);
        all.put("NextSteps", NextSteps::run);
        all.put("Freezing", Freezing::run);
        all.put("DrawnLitters", DrawnLitters::run);
        all.put("Names", Names::run);
        all.put("NameRecords", NameRecords::run);
        all.put("Hypothesis", Hypothesis::run);
        all.put("RelevantEvidence", RelevantEvidence::run);
        all.put("FerretCommonPractice", FerretCommonPractice::run);
        all.put("FerretMolecular", FerretMolecular::run);
        all.put("FerretSilver", FerretSilver::run);
        all.put("FerretPedigrees", FerretPedigrees::run);
        all.put("FerretPaleLoci", FerretPaleLoci::run);
        all.put("FerretTrap", FerretTrap::run);
        all.put("FerretDarkEyedWhite", FerretDarkEyedWhite::run);
        return Collections.unmodifiableMap(all);
    }
}
