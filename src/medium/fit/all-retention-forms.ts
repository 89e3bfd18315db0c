import { formBrooksCorey1964 } from './form-brooks-corey-1964.js'
import { formCampbell1974 } from './form-campbell-1974.js'
import { formDurner1994 } from './form-durner-1994.js'
import { formFredlundXing1994 } from './form-fredlund-xing-1994.js'
import { formKosugi1996 } from './form-kosugi-1996.js'
import { formLogLogistic } from './form-log-logistic.js'
import { formMilksFontenoLarson1989 } from './form-milks-fonteno-larson-1989.js'
import { formVanGenuchten1980 } from './form-van-genuchten-1980.js'
import { formVanGenuchtenBurdine1980 } from './form-van-genuchten-burdine-1980.js'
import type { RetentionForm } from './retention-form.js'

/** Every retention model that can be fitted. A program that needs few of them should list those instead. */
export const allRetentionForms: readonly RetentionForm[] = [
  formVanGenuchten1980,
  formVanGenuchtenBurdine1980,
  formBrooksCorey1964,
  formCampbell1974,
  formKosugi1996,
  formLogLogistic,
  formMilksFontenoLarson1989,
  formFredlundXing1994,
  formDurner1994,
]
